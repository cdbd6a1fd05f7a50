# Two constructions by one censored likelihood under laws that are not normal: survival::survreg. R 4.2.2, survival 3.5.3.
# Run: Rscript comparison-laws.R > ../comparison/laws.json
# lives: acute myelogenous leukaemia data (Embury et al. 1977; Miller 1981 p. 49), right-censored, as kilometres.
# drops: the made-up drops of comparison.R. Ratios of medians under one scale are exp(coefficient) for laws of the logarithm, with
# profile limits by an offset; for the logistic law, of x itself, the coefficient is the difference, likewise. Both tests are
# likelihood ratios; log-rank by survdiff.
suppressMessages(library(survival))
ctl <- survreg.control(rel.tolerance = 1e-13, maxiter = 300)
a <- data.frame(x = rep(c(42, 44, 46, 48, 50), c(4, 6, 8, 7, 5)),
                f = c(0,0,0,0, 1,0,0,0,0,0, 1,1,0,0,0,1,0,0, 1,1,1,0,1,0,1, 1,1,1,1,0))
b <- data.frame(x = rep(c(38, 40, 42, 44, 46), c(4, 7, 8, 7, 4)),
                f = c(0,0,1,0, 0,1,0,0,0,1,0, 1,1,0,0,1,0,1,0, 1,1,1,0,1,1,0, 1,1,1,1))
drops <- rbind(cbind(a, k = 0), cbind(b, k = 1))
yd <- Surv(ifelse(drops$f == 1, NA, drops$x), ifelse(drops$f == 1, drops$x, NA), type = "interval2")
lives <- data.frame(t = aml$time, s = aml$status, k = as.integer(aml$x == "Nonmaintained"))
yl <- with(lives, Surv(t, s))
num <- function(x) if (length(x) == 1) sprintf("%.15g", x) else paste0("[", paste(sprintf("%.15g", x), collapse = ", "), "]")
obj <- function(l) paste0("{ ", paste(sprintf('"%s": %s', names(l), sapply(l, num)), collapse = ", "), " }")
one <- function(y, k, dist) {
  com <- survreg(y ~ k, dist = dist, control = ctl)
  sep <- survreg(y ~ k + strata(k), dist = dist, control = ctl)
  nul <- survreg(y ~ 1, dist = dist, control = ctl)
  top <- logLik(com)[1]
  fall <- function(e) 2 * (top - logLik(survreg(y ~ offset(e * k), dist = dist, control = ctl))[1]) - qchisq(0.95, 1)
  e <- unname(coef(com)[2]); se <- sqrt(vcov(com)[2, 2])
  ends <- c(uniroot(fall, c(e - 6 * se, e), tol = 1e-10)$root, uniroot(fall, c(e, e + 6 * se), tol = 1e-10)$root)
  isLog <- dist %in% c("weibull", "lognormal", "loglogistic")
  shown <- if (isLog) exp(c(e, ends)) else c(e, ends)
  med <- unname(sapply(0:1, function(g) predict(com, newdata = data.frame(k = g), type = "quantile", p = 0.5)))
  list(medians = med, effect = shown, p = pchisq(2 * (top - logLik(nul)[1]), 1, lower.tail = FALSE),
       equalSpreads = 2 * (logLik(sep)[1] - top),
       ownMedians = unname(sapply(0:1, function(g) predict(sep, newdata = data.frame(k = g), type = "quantile", p = 0.5))))
}
sd <- survdiff(Surv(t, s) ~ k, data = lives)
cat(sprintf('{\n  "source": "R 4.2.2, survival 3.5.3, scripts/comparison-laws.R",\n  "lives": {\n    "first": %s,\n    "second": %s,\n    "weibull": %s,\n    "lognormal": %s,\n    "logrank": %s\n  },\n  "drops": {\n    "weibull": %s,\n    "lognormal": %s,\n    "logistic": %s\n  }\n}\n',
  paste0("[", paste(sprintf("[%g, %d]", lives$t[lives$k == 0], as.integer(lives$s[lives$k == 0])), collapse = ", "), "]"),
  paste0("[", paste(sprintf("[%g, %d]", lives$t[lives$k == 1], as.integer(lives$s[lives$k == 1])), collapse = ", "), "]"),
  obj(one(yl, lives$k, "weibull")), obj(one(yl, lives$k, "lognormal")),
  obj(list(statistic = sd$chisq, p = pchisq(sd$chisq, 1, lower.tail = FALSE))),
  obj(one(yd, drops$k, "weibull")), obj(one(yd, drops$k, "lognormal")), obj(one(yd, drops$k, "logistic"))))
