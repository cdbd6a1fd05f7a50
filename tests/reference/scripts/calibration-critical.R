# Quantiles of the signed root of the likelihood ratio of a quantile among simulated up-and-down tests, normal strength:
# what the table of critical values (bench/critical-table.ts) holds, found without any of its code. The supremum of the
# likelihood is that of a probit fit by glm where the slope is positive, else that of one chance for all levels; under the
# hypothesis the scale is sought by optimize() on the line of laws through the quantile, both limits included.
# R 4.2.2, base only, seed 20261125, 20000 tests a case: Rscript calibration-critical.R > ../calibration/critical.json
set.seed(20261125)
tests <- 20000

binomial_loglik <- function(f, s, p) sum(ifelse(f > 0, f * log(p), 0) + ifelse(s > 0, s * log1p(-p), 0))

signed_root <- function(index, failed, offset, z) {
  k <- sort(unique(index))
  f <- as.vector(tapply(failed, factor(index, k), sum))
  s <- as.vector(table(factor(index, k))) - f
  x <- k + offset
  n <- sum(f) + sum(s)
  flat <- binomial_loglik(f, s, sum(f) / n)
  free <- flat
  where <- if (z > qnorm(sum(f) / n)) Inf else -Inf
  if (sum(f) > 0 && sum(s) > 0 && length(x) > 1) {
    fit <- suppressWarnings(glm.fit(cbind(1, x), cbind(f, s), family = binomial("probit"),
      weights = rep(1, length(x)), control = list(maxit = 200, epsilon = 1e-10)))
    b <- fit$coefficients
    if (is.finite(b[2]) && b[2] > 0) {
      p <- fit$fitted.values
      free <- max(flat, sum(dbinom(f, f + s, p, log = TRUE)) - sum(lchoose(f + s, f)))
      where <- (z - b[1]) / b[2]
    }
  } else if (sum(f) == 0) where <- Inf
  else if (sum(s) == 0) where <- -Inf
  held <- function(logb) {
    q <- z + exp(logb) * x
    sum(f * pnorm(q, log.p = TRUE) + s * pnorm(-q, log.p = TRUE))
  }
  best <- max(optimize(held, c(-8, 0), maximum = TRUE)$objective,
    optimize(held, c(0, 5), maximum = TRUE)$objective, binomial_loglik(f, s, pnorm(z)))
  sign(where) * sqrt(max(0, 2 * (free - best)))
}

case <- function(drops, scale, offset, p) {
  # Levels 1 apart; the quantile at share p lies at 0, the start at `offset`.
  z <- qnorm(p)
  roots <- replicate(tests, {
    index <- integer(drops)
    failed <- logical(drops)
    at <- 0L
    for (i in seq_len(drops)) {
      index[i] <- at
      failed[i] <- runif(1) < pnorm((at + offset) / scale + z)
      at <- at + if (failed[i]) -1L else 1L
    }
    signed_root(index, failed, offset, z)
  })
  q <- function(values, level) sort(values)[ceiling(level * (tests + 1))]
  sprintf('{ "drops": %d, "scale": %g, "offset": %g, "p": %g, "both": [%.3f, %.3f], "above": [%.3f, %.3f], "below": [%.3f, %.3f] }',
    drops, scale, offset, p, q(abs(roots), 0.9), q(abs(roots), 0.95), q(roots, 0.9), q(roots, 0.95),
    q(-roots, 0.9), q(-roots, 0.95))
}

cases <- c(
  case(15, 2, -3, 0.5),
  case(15, 0.5, 0.25, 0.5),
  case(20, 1, 0, 0.5),
  case(30, 1, -1.5, 0.1),
  case(24, 1.4, 0.6, 0.1)
)
cat('{\n  "source": "calibration-critical.R, R ', R.version$major, ".", R.version$minor,
  ', 20000 tests a case; limits at 0.9 and 0.95",\n  "cases": [\n    ', paste(cases, collapse = ",\n    "), "\n  ]\n}\n", sep = "")
