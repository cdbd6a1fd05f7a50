# Kendall and Spearman by R's cor.test. R 4.2: Rscript rank-correlations.R > ../rank/correlations.json
# Spearman beyond 9 pairs: R takes an Edgeworth series (AS 89) where we count every order; hence a tolerance.
one <- function(name, x, y, tolerance, spearmanExact = NULL) {
  k <- suppressWarnings(cor.test(x, y, method = "kendall"))
  s <- suppressWarnings(cor.test(x, y, method = "spearman", exact = spearmanExact))
  list <- function(v) paste(v, collapse = ", ")
  sprintf('    { "name": "%s", "x": [%s], "y": [%s], "tau": %.12f, "tauP": %.12f, "rho": %.12f, "rhoP": %.12f, "rhoTolerance": %g }',
          name, list(x), list(y), k$estimate, k$p.value, s$estimate, s$p.value, tolerance)
}
cases <- c(
  one("seven pairs", c(48, 52, 41, 60, 55, 39, 45), c(1.2, 0.9, 1.1, 0.4, 0.8, 2.0, 1.6), 1e-9),
  one("eleven pairs", c(3, 1, 4, 15, 9, 2, 6, 5, 35, 8, 97), c(2, 7, 1, 8, 28, 18, 4, 5, 9, 23, 6), 2e-3),
  one("twenty pairs", 1:20, c(3, 1, 5, 2, 4, 8, 6, 10, 7, 12, 9, 11, 15, 13, 14, 20, 16, 18, 17, 19), 1e-9, FALSE),
  one("ties on both sides", c(1, 2, 2, 3, 4, 4, 4, 5, 6, 7), c(2, 1, 3, 3, 5, 4, 4, 6, 6, 8), 1e-9)
)
cat(sprintf('{\n  "source": "tests/reference/scripts/rank-correlations.R, R %s.%s",\n  "cases": [\n%s\n  ]\n}\n',
            R.version$major, R.version$minor, paste(cases, collapse = ",\n")))
