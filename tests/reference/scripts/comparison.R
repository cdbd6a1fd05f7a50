# Two constructions of failures and survivals by one likelihood: estimates by survival::survreg (gaussian), profile limits of the
# ratio and difference of medians by optim on the likelihood written out here. R 4.2.2, survival 3.5.3.
# Run: Rscript comparison.R > ../comparison/two-constructions.json
# Made-up drops: energy in J, share failed rising with it; first and second differ in median and spread.
suppressMessages(library(survival))
a <- data.frame(x = rep(c(42, 44, 46, 48, 50), c(4, 6, 8, 7, 5)),
                f = c(0,0,0,0, 1,0,0,0,0,0, 1,1,0,0,0,1,0,0, 1,1,1,0,1,0,1, 1,1,1,1,0))
b <- data.frame(x = rep(c(38, 40, 42, 44, 46), c(4, 7, 8, 7, 4)),
                f = c(0,0,1,0, 0,1,0,0,0,1,0, 1,1,0,0,1,0,1,0, 1,1,1,0,1,1,0, 1,1,1,1))
d <- rbind(cbind(a, k = "A"), cbind(b, k = "B"))
y <- Surv(ifelse(d$f == 1, NA, d$x), ifelse(d$f == 1, d$x, NA), type = "interval2")
ctl <- survreg.control(rel.tolerance = 1e-13, maxiter = 200)
com <- survreg(y ~ k, data = d, dist = "gaussian", control = ctl)
sep <- survreg(y ~ k + strata(k), data = d, dist = "gaussian", control = ctl)
nul <- survreg(y ~ 1, data = d, dist = "gaussian", control = ctl)
ll <- function(ma, sa, mb, sb) sum(pnorm((a$x - ma) / sa * ifelse(a$f == 1, 1, -1), log.p = TRUE)) +
  sum(pnorm((b$x - mb) / sb * ifelse(b$f == 1, 1, -1), log.p = TRUE))
fine <- function(f, start) { p <- start; for (i in 1:6) p <- optim(p, f, control = list(reltol = 1e-15, maxit = 5000))$par
  optim(p, f, method = "BFGS", control = list(reltol = 1e-15, maxit = 1000))$value }
m <- unname(coef(com)[1]); s <- log(com$scale)
prof <- function(second, separate) if (separate)
  -fine(function(p) -ll(p[1], exp(p[2]), second(p[1]), exp(p[3])), c(m, s, s)) else
  -fine(function(p) -ll(p[1], exp(p[2]), second(p[1]), exp(p[2])), c(m, s))
limits <- function(of, best, low, high, separate) {
  top <- logLik(if (separate) sep else com)[1]
  g <- function(v) 2 * (top - prof(of(v), separate)) - qchisq(0.95, 1)
  c(uniroot(g, c(low, best), tol = 1e-9)$root, uniroot(g, c(best, high), tol = 1e-9)$root) }
ratio <- function(v) function(m) m * v
plus <- function(v) function(m) m + v
one <- function(fit, separate) { cf <- coef(fit); r <- unname((cf[1] + cf[2]) / cf[1]); e <- unname(cf[2])
  list(medians = unname(c(cf[1], cf[1] + cf[2])), ratio = c(r, limits(ratio, r, 0.75, 1.05, separate)),
       difference = c(e, limits(plus, e, -12, 2, separate)),
       p = pchisq(2 * (logLik(fit)[1] - prof(ratio(1), separate)), 1, lower.tail = FALSE)) }
V <- vcov(com); mb <- sum(coef(com)[1:2]); g <- c(1 / mb - 1 / m, 1 / mb)
least <- exp((qnorm(0.975) + qnorm(0.8)) * sqrt(drop(t(g) %*% V[1:2, 1:2] %*% g)))
num <- function(x) if (length(x) == 1) sprintf("%.15g", x) else paste0("[", paste(sprintf("%.15g", x), collapse = ", "), "]")
obj <- function(l) paste0("{ ", paste(sprintf('"%s": %s', names(l), sapply(l, num)), collapse = ", "), " }")
looks <- function(t) paste0("[", paste(sprintf("[%g, %d]", t$x, as.integer(t$f)), collapse = ", "), "]")
cat(sprintf('{\n  "source": "R 4.2.2, survival 3.5.3, scripts/comparison.R",\n  "first": %s,\n  "second": %s,\n  "common": %s,\n  "separate": %s,\n  "equalMediansBySurvreg": %s,\n  "equalSpreads": %s,\n  "smallestRatio": %s\n}\n',
  looks(a), looks(b), obj(one(com, FALSE)), obj(one(sep, TRUE)),
  num(pchisq(2 * (logLik(com)[1] - logLik(nul)[1]), 1, lower.tail = FALSE)), num(2 * (logLik(sep)[1] - logLik(com)[1])), num(least)))
