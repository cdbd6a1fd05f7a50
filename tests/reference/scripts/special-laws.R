# Quantiles and probabilities of the laws of test statistics by R 4.2.2 (package stats), for
# tests/statistics/laws. Writes tests/reference/special/laws-r.json: law, parameters, argument, value.
#   Rscript special-laws.R
rows <- list()
add <- function(name, parameters, argument, value) rows[[length(rows) + 1]] <<- list(name, parameters, argument, value)
p <- c(1e-250, 1e-20, 1e-5, 0.01, 0.05, 0.3, 0.5, 0.7, 0.95, 0.975, 0.99, 1 - 1e-9)
for (x in p) {
  for (df in c(1, 2, 7.5, 30, 400)) add("chiSquared", c(df), x, qchisq(x, df))
  for (a in c(0.5, 3)) add("gamma", c(a, 2.5), x, qgamma(x, shape = a, scale = 2.5))
  for (df in c(1, 2, 7.5, 30, 400)) add("student", c(df), x, qt(x, df))
  # qf goes by 1/qbeta - 1 and loses small quantiles: at 1e-5, (1, 5) it has 6 digits (closed form in the test)
  if (x > 1e-3) for (d in list(c(1, 5), c(3, 16), c(40, 2))) add("fisher", d, x, qf(x, d[1], d[2]))
  for (s in list(c(0.5, 0.5), c(4, 17), c(300, 2))) add("beta", s, x, qbeta(x, s[1], s[2]))
}
for (k in c(0, 1, 4, 10, 19, 20)) for (prob in c(0.01, 0.2, 0.9)) {
  add("binomialCdf", c(20, prob), k, pbinom(k, 20, prob))
  add("binomialSf", c(20, prob), k, pbinom(k, 20, prob, lower.tail = FALSE))
}
for (k in c(0, 1, 7, 40, 120)) for (m in c(0.05, 3, 60)) {
  add("poissonCdf", c(m), k, ppois(k, m))
  add("poissonSf", c(m), k, ppois(k, m, lower.tail = FALSE))
}
for (x in c(0.001, 0.05, 0.5, 0.9, 0.9999)) {
  add("binomialQuantile", c(20, 0.2), x, qbinom(x, 20, 0.2))
  add("poissonQuantile", c(3), x, qpois(x, 3))
  add("poissonQuantile", c(1000), x, qpois(x, 1000))
}
line <- function(r) sprintf('    {"law": "%s", "parameters": [%s], "at": %.17g, "value": %.17g}', r[[1]],
                            paste(sprintf("%.17g", r[[2]]), collapse = ", "), r[[3]], r[[4]])
text <- c('{', sprintf('  "source": "%s, tests/reference/scripts/special-laws.R",', R.version.string), '  "rows": [',
          paste(sapply(rows, line), collapse = ",\n"), '  ]', '}')
writeLines(text, "../special/laws-r.json")
