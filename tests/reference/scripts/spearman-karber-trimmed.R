# Trimmed Spearman-Karber: mean by adaptive quadrature of the inverse of the failure curve, standard error by central
# differences of that mean in each share, with binomial variances. Independent of the closed forms under test.
# R 4.2.2; run: Rscript spearman-karber-trimmed.R > ../spearman-karber/trimmed-standard-errors.json
trimmed <- function(x, p, a) {
  inverse <- function(s) approx(p, x, s, ties = "ordered")$y
  cuts <- unique(sort(c(a, 1 - a, p[p > a & p < 1 - a])))
  sum(mapply(function(l, u) integrate(inverse, l, u, rel.tol = 1e-13)$value, head(cuts, -1), tail(cuts, -1))) / (1 - 2 * a)
}
case <- function(name, dose, n, r, trim) {
  x <- log10(dose)
  p <- r / n
  stopifnot(all(diff(p) > 0))            # strictly rising, so pooling does not enter
  h <- 1e-5
  d <- sapply(seq_along(p), function(i) {
    if (p[i] == 0 || p[i] == 1) return(0) # no binomial variance there
    up <- p; up[i] <- up[i] + h
    dn <- p; dn[i] <- dn[i] - h
    (trimmed(x, up, trim) - trimmed(x, dn, trim)) / (2 * h)
  })
  se <- sqrt(sum(d^2 * p * (1 - p) / n))
  sprintf('  { "name": "%s", "trim": %s, "dose": [%s], "n": [%s], "r": [%s], "mean": %.15g, "standardError": %.12g }',
    name, trim, toString(dose), toString(rep_len(n, length(dose))), toString(r), trimmed(x, p, trim), se)
}
hamilton <- function(trim) case("Hamilton p. 5", c(0.5, 1, 2, 4, 8), 10, c(0, 2, 4, 9, 10), trim)
wide <- function(trim) case("own, unequal numbers", c(10, 15, 30, 50, 60), c(8, 12, 15, 12, 8), c(1, 3, 6, 8, 7), trim)
cat('{ "source": "tests/reference/scripts/spearman-karber-trimmed.R, R 4.2.2",\n"cases": [\n')
cat(paste(c(hamilton(0), hamilton(0.05), hamilton(0.15), hamilton(0.3), wide(0.13), wide(0.2), wide(0.45)), collapse = ",\n"))
cat("\n] }\n")
