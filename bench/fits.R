# R's glm over the tests of bench/fits.ts: Rscript bench/fits.R TESTS.csv [most tests, default 4000].
# Probit regression of grouped counts, default control, with the covariance that summary() reads; the median and its
# spread follow from the coefficients. Timed without reading the file.
arguments <- commandArgs(trailingOnly = TRUE)
most <- if (length(arguments) > 1) as.integer(arguments[2]) else 4000L
rows <- read.csv(arguments[1])
tests <- split(rows, rows$test)
tests <- tests[seq_len(min(most, length(tests)))]

fit_one <- function(d) {
  fit <- glm(cbind(failed, drops - failed) ~ level, family = binomial("probit"), data = d)
  b <- coef(fit)
  vcov(fit)
  c(-b[[1]] / b[[2]], 1 / b[[2]])
}

options(warn = -1) # fitted probabilities of 0 or 1 at far levels
invisible(fit_one(tests[[1]]))
# Time of the processor, as on the other side.
time <- sum(system.time(found <- vapply(tests, fit_one, c(0, 0)))[c("user.self", "sys.self")])
cat(sprintf("%d tests: %.3f s, %.0f fits a second; mean location %.10f, mean scale %.10f; R %s\n",
  length(tests), time, length(tests) / time, mean(found[1, ]), mean(found[2, ]), getRversion()))
