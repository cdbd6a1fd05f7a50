# Log-rank test of three groups and cumulative incidence by the survival package.
# R 4.2, survival 3.5: Rscript life-survival.R > ../life/survival.json
suppressMessages(library(survival))
options(digits = 15)
t <- c(5, 8, 8, 12, 16, 20, 3, 8, 13, 13, 21, 30, 33, 9, 12, 27, 28, 40, 41, 45, 45)
s <- c(1, 1, 0, 1, 0, 1, 1, 1, 1, 0, 1, 0, 1, 0, 1, 1, 0, 1, 1, 0, 1)
g <- rep(1:3, c(6, 7, 8))
text <- function(v) paste(format(v, digits = 15, trim = TRUE), collapse = ", ")
groups <- sapply(1:3, function(k) sprintf('    { "t": [%s], "s": [%s] }', text(t[g == k]), text(s[g == k])))
time <- c(4, 6, 6, 9, 11, 15, 15, 18, 22, 25)
cause <- c("bead", "tread", "", "bead", "tread", "tread", "bead", "", "tread", "")
fit <- survfit(Surv(time, factor(ifelse(cause == "", "none", cause), levels = c("none", "bead", "tread"))) ~ 1)
incidence <- function(k, name) {
  at <- match(sort(unique(time[cause == name])), fit$time)
  paste(sprintf("[%g, %.12f]", fit$time[at], fit$pstate[at, k]), collapse = ", ")
}
cat(sprintf('{\n  "source": "tests/reference/scripts/life-survival.R, R %s.%s, survival %s",\n', R.version$major, R.version$minor, packageVersion("survival")))
cat(sprintf('  "groups": [\n%s\n  ],\n', paste(groups, collapse = ",\n")))
cat(sprintf('  "chisq": %.12f,\n  "chisqRho1": %.12f,\n', survdiff(Surv(t, s) ~ g)$chisq, survdiff(Surv(t, s) ~ g, rho = 1)$chisq))
cat(sprintf('  "competing": {\n    "t": [%s],\n    "cause": [%s],\n    "bead": [%s],\n    "tread": [%s]\n  }\n}\n',
            text(time), paste(sprintf('"%s"', cause), collapse = ", "), incidence(2, "bead"), incidence(3, "tread")))
