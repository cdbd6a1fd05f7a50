# Limits for ordered binomial shares after Morris (1988, from memory), by enumeration of every outcome: the probability,
# at one common share, of all results that are lexicographically as high or higher than the one observed (read from the
# level itself downwards). Written independently of the recursion under test.
# R 4.2.2; run: Rscript isotonic-order-limits.R > ../isotonic/order-limits.json
lower <- function(y, n, risk) {
  if (all(y == 0)) return(0)
  grid <- as.matrix(expand.grid(lapply(n, function(k) 0:k)))
  high <- apply(grid, 1, function(g) {
    for (i in length(y):1) { if (g[i] > y[i]) return(TRUE); if (g[i] < y[i]) return(FALSE) }
    TRUE
  })
  f <- function(t) sum(apply(grid[high, , drop = FALSE], 1, function(g) prod(dbinom(g, n, t)))) - risk
  uniroot(f, c(0, 1), tol = 1e-13)$root
}
case <- function(y, n, confidence) {
  risk <- (1 - confidence) / 2
  k <- length(y)
  lo <- sapply(1:k, function(i) lower(y[1:i], n[1:i], risk))
  up <- sapply(1:k, function(i) 1 - lower(rev((n - y)[i:k]), rev(n[i:k]), risk))
  sprintf('  { "failures": [%s], "drops": [%s], "confidence": %s, "lower": [%s], "upper": [%s] }',
    toString(y), toString(n), confidence, toString(sprintf("%.11g", lo)), toString(sprintf("%.11g", up)))
}
cat('{ "source": "tests/reference/scripts/isotonic-order-limits.R, R 4.2.2",\n"cases": [\n')
cat(paste(c(
  case(c(0, 1, 3, 3, 4), c(2, 5, 7, 7, 4), 0.95),
  case(c(0, 1, 5, 6, 3), c(1, 7, 12, 9, 4), 0.9),
  case(c(0, 4, 2, 7), c(10, 10, 10, 10), 0.95)), collapse = ",\n"))
cat("\n] }\n")
