# Reference fits of the censored location-scale likelihood, for tests/statistics/likelihood.
# Run:  Rscript tests/reference/scripts/likelihood-fits.R > tests/reference/likelihood/fits.json
# Made with R 4.2.2 and survival 3.5-3 (Debian 12).
#
# Estimates, log-likelihood and covariance: survreg with rel.tolerance 1e-14 (observed information). Sets of
# failures and survivals only are fitted once more by glm with epsilon 1e-18, as another code. Profile limits: the
# likelihood written out below (log-cdf differences), maximised by optimize() over log(scale) and cut by uniroot().
suppressMessages(library(survival))

inf <- Inf
row <- function(lower, upper, count = 1) data.frame(lower = lower, upper = upper, count = count)
quantal <- function(x, n, failed) {
  r <- rbind(row(-inf, x, failed), row(x, inf, n - failed))
  r[r$count > 0, ]
}

sets <- list(
  # SEN-01: bottle staircase 1969, metres (data found in print)
  bottles = quantal(c(0.6, 0.9, 1.2, 1.5, 1.8, 2.1), c(1, 7, 12, 9, 4, 1), c(0, 1, 5, 6, 3, 1)),
  # SEN-02: drop hammer 2019, centimetres (data found in print)
  hammer = quantal(c(25.4, 28.5, 32.0, 35.9, 40.3), c(2, 5, 7, 7, 4), c(0, 1, 3, 3, 4)),
  # SEN-15: beetle mortality (Bliss 1935), log10 dose raised to a dose
  beetles = quantal(10^c(1.6907, 1.7242, 1.7552, 1.7842, 1.8113, 1.8369, 1.861, 1.8839),
    c(59, 60, 62, 56, 63, 59, 62, 60), c(6, 13, 18, 28, 52, 53, 61, 60)),
  # SEN-24: turbine wheels inspected once (Nelson 1982), 100 h
  wheels = quantal(c(4, 10, 14, 18, 22, 26, 30, 34, 38, 42, 46),
    c(39, 53, 33, 73, 30, 39, 42, 13, 34, 40, 36), c(0, 4, 2, 7, 5, 9, 9, 6, 22, 21, 21)),
  # SEN-29: rising height, 25 mm from 300 mm to 600 mm (self-made)
  rising = {
    f <- c(450, 425, 475, 300, 500, 400, 450, 525, 475, 425, 600, 350, 450, 500, NA, 475)
    rbind(row(ifelse(is.na(f), 600, ifelse(f == 300, -inf, f - 25)), ifelse(is.na(f), inf, f)))
  },
  # all kinds at once: exact, narrow and wide interval, left- and right-censored (self-made)
  mixed = rbind(row(c(31.2, 44.7, 52.9, 38.4, 61.3), c(31.2, 44.7, 52.9, 38.4, 61.3)),
    row(c(40, 35, 48, 20), c(45, 55, 48.01, 30), c(2, 1, 1, 1)), row(-inf, 33, 2), row(c(50, 70), inf, c(3, 1))),
  # LIF-13: truck tyres in a wear test (Bury 1999, example 10.3), unit not stated: 18 failures, 4 suspensions
  tyres = {
    t <- c(17.8, 22.7, 27.0, 32.5, 34.3, 34.6, 37.0, 38.4, 42.3, 43.6, 45.5, 48.6, 55.2, 56.4, 57.8, 62.6, 66.9, 72.3)
    rbind(row(t, t), row(c(40, 50, 60), inf, c(1, 1, 2)))
  }
)

laws <- list(
  normal = list(dist = "gaussian", log = FALSE, p = pnorm, d = dnorm, q = qnorm),
  lognormal = list(dist = "lognormal", log = TRUE, p = pnorm, d = dnorm, q = qnorm),
  logistic = list(dist = "logistic", log = FALSE, p = plogis, d = dlogis, q = qlogis),
  weibull = list(dist = "weibull", log = TRUE,
    p = function(z, lower.tail = TRUE, log.p = FALSE) {
      s <- -exp(z)                                     # log of the survivor function
      if (!lower.tail) return(if (log.p) s else exp(s))
      if (log.p) ifelse(s > -0.7, log(-expm1(s)), log1p(-exp(s))) else -expm1(s)
    },
    d = function(z, log = FALSE) { v <- z - exp(z); if (log) v else exp(v) },
    q = function(p) log(-log1p(-p)))
)

logdiff <- function(big, small) big + log1p(-exp(small - big))

loglik <- function(set, law, mu, sigma) {
  tr <- if (law$log) function(v) suppressWarnings(log(pmax(v, 0))) else identity
  zl <- (tr(set$lower) - mu) / sigma
  zu <- (tr(set$upper) - mu) / sigma
  v <- numeric(nrow(set))
  for (i in seq_len(nrow(set))) {
    v[i] <- if (set$lower[i] == set$upper[i]) law$d(zl[i], log = TRUE) - log(sigma) - if (law$log) log(set$lower[i]) else 0
      else if (zl[i] == -Inf) law$p(zu[i], log.p = TRUE)
      else if (zu[i] == Inf) law$p(zl[i], lower.tail = FALSE, log.p = TRUE)
      else if (zl[i] + zu[i] < 0) logdiff(law$p(zu[i], log.p = TRUE), law$p(zl[i], log.p = TRUE))
      else logdiff(law$p(zl[i], lower.tail = FALSE, log.p = TRUE), law$p(zu[i], lower.tail = FALSE, log.p = TRUE))
  }
  sum(set$count * v)
}

maxover <- function(f, centre) {
  # widen until the maximum is inside, then refine
  w <- 0.5
  repeat {
    o <- optimize(f, c(centre - w, centre + w), maximum = TRUE, tol = 1e-9)
    if (abs(o$maximum - centre) < 0.95 * w) break
    w <- 2 * w
    if (w > 40) break
  }
  optimize(f, c(o$maximum - 0.05, o$maximum + 0.05), maximum = TRUE, tol = 1e-10)$objective
}

limit <- function(g, at, step) {
  # outward from `at` until g < 0; NA where that does not happen within 2^12 steps
  s <- step
  for (k in 1:12) { if (g(at + s) < 0) return(uniroot(g, sort(c(at, at + s)), tol = 1e-13, maxiter = 500)$root); s <- 2 * s }
  NA
}

fmt <- function(v) paste0("[", paste(ifelse(is.na(v), "null", sprintf("%.15g", v)), collapse = ", "), "]")
ends <- function(v) paste0("[", paste(ifelse(is.infinite(v), "null", sprintf("%.17g", v)), collapse = ", "), "]")

one <- function(set, law) {
  tr <- if (law$log) log else identity
  s <- set
  time1 <- ifelse(is.infinite(s$lower), NA, s$lower)
  time2 <- ifelse(is.infinite(s$upper), NA, s$upper)
  fit <- survreg(Surv(time1, time2, type = "interval2") ~ 1, weights = s$count, dist = law$dist,
    control = survreg.control(rel.tolerance = 1e-14, maxiter = 500, toler.chol = 1e-14))
  mu <- unname(coef(fit)); sigma <- fit$scale
  # survreg's variance is of (mu, log sigma); turned into (mu, sigma)
  J <- diag(c(1, sigma)); V <- J %*% fit$var %*% J
  best <- loglik(set, law, mu, sigma)
  back <- if (law$log) exp else identity
  crit <- qchisq(0.95, 1)
  out <- sprintf('"location": %.15g, "scale": %.15g, "logLikelihood": %.15g, "covariance": %s', mu, sigma,
    fit$loglik[1], fmt(V[c(1, 2, 4)]))
  # quantiles on the original scale, delta-method error of the printed value
  qs <- sapply(c(0.1, 0.5, 0.9), function(p) {
    z <- law$q(p); y <- mu + sigma * z
    se <- sqrt(V[1, 1] + 2 * z * V[1, 2] + z^2 * V[2, 2])
    g <- function(t) maxover(function(ls) loglik(set, law, t - exp(ls) * z, exp(ls)), log(sigma)) - best + crit / 2
    lo <- limit(g, y, -se); hi <- limit(g, y, se)
    v <- back(y)
    sprintf('{ "probability": %g, "value": %.15g, "standardError": %.15g, "profile": %s }', p, v,
      if (law$log) v * se else se, fmt(back(c(lo, hi))))
  })
  out <- paste0(out, ', "quantiles": [', paste(qs, collapse = ", "), "]")
  gs <- function(ls) maxover2(set, law, mu, sigma, exp(ls)) - best + crit / 2
  lo <- limit(gs, log(sigma), -0.5); hi <- limit(gs, log(sigma), 0.5)
  out <- paste0(out, sprintf(', "scaleProfile": %s', fmt(exp(c(lo, hi)))))
  # failure probability at a level below the median
  x0 <- back(mu + sigma * law$q(0.3)); x0 <- signif(x0, 3); y0 <- tr(x0)
  gz <- function(z) maxover(function(ls) loglik(set, law, y0 - exp(ls) * z, exp(ls)), log(sigma)) - best + crit / 2
  z0 <- (y0 - mu) / sigma
  lo <- limit(gz, z0, -0.3); hi <- limit(gz, z0, 0.3)
  paste0(out, sprintf(', "failure": { "at": %.15g, "value": %.15g, "profile": %s }', x0, law$p(z0), fmt(law$p(c(lo, hi)))))
}

maxover2 <- function(set, law, mu, sigma, s) {
  f <- function(m) loglik(set, law, m, s)
  w <- 2 * sigma + 2 * s
  o <- optimize(f, c(mu - w, mu + w), maximum = TRUE, tol = 1e-9)
  optimize(f, c(o$maximum - 0.05 * s, o$maximum + 0.05 * s), maximum = TRUE, tol = 1e-10)$objective
}

glmfit <- function(set, law, link) {
  tr <- if (law$log) log else identity
  f <- set[is.infinite(set$lower), ]; s <- set[is.infinite(set$upper), ]
  x <- tr(sort(unique(c(f$upper, s$lower)), decreasing = FALSE))
  lv <- sort(unique(c(f$upper, s$lower)))
  nf <- sapply(lv, function(v) sum(f$count[f$upper == v])); ns <- sapply(lv, function(v) sum(s$count[s$lower == v]))
  g <- glm(cbind(nf, ns) ~ x, family = binomial(link), control = glm.control(epsilon = 1e-18, maxit = 200))
  b <- coef(g)
  sprintf(', "glm": { "location": %.15g, "scale": %.15g }', -b[1] / b[2], 1 / b[2])
}

links <- c(normal = "probit", lognormal = "probit", logistic = "logit", weibull = "cloglog")
parts <- c()
for (n in names(sets)) {
  set <- sets[[n]]
  quantalOnly <- all(is.infinite(set$lower) | is.infinite(set$upper))
  fits <- sapply(names(laws), function(l) {
    extra <- if (quantalOnly) suppressWarnings(glmfit(set, laws[[l]], links[[l]])) else ""
    sprintf('    "%s": { %s%s }', l, suppressWarnings(one(set, laws[[l]])), extra)
  })
  parts <- c(parts, sprintf('  "%s": {\n   "lower": %s,\n   "upper": %s,\n   "count": %s,\n   "fits": {\n%s\n   }\n  }', n,
    ends(set$lower), ends(set$upper), ends(set$count), paste(fits, collapse = ",\n")))
}
cat(sprintf('{\n "source": "tests/reference/scripts/likelihood-fits.R, %s, survival %s",\n "seen": "computed",\n "level": 0.95,\n "sets": {\n%s\n }\n}\n',
  R.version.string, as.character(packageVersion("survival")), paste(parts, collapse = ",\n")))
