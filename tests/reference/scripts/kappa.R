# Standard errors of Cohen's kappa for the table 20, 5 / 10, 15, written apart from the closed forms:
# of kappa by the delta method with numerical derivatives on the multinomial shares; under chance with the shares replaced by
# the products of their margins. R 4.2: Rscript kappa.R > ../kappa.json
kappa <- function(p) {
  k <- sqrt(length(p)); m <- matrix(p, k, byrow = TRUE)
  m <- m / sum(m)
  e <- sum(rowSums(m) * colSums(m))
  (sum(diag(m)) - e) / (1 - e)
}
se <- function(p, n) {
  gradient <- sapply(seq_along(p), function(i) {
    up <- p; up[i] <- up[i] + 1e-5; down <- p; down[i] <- down[i] - 1e-5
    (kappa(up) - kappa(down)) / 2e-5
  })
  sqrt((sum(p * gradient^2) - sum(p * gradient)^2) / n)
}
counts <- c(20, 5, 10, 15); n <- sum(counts); p <- counts / n
m <- matrix(p, 2, byrow = TRUE)
chance <- as.vector(t(outer(rowSums(m), colSums(m))))
cat(sprintf('{\n  "source": "tests/reference/scripts/kappa.R, R %s",\n  "standardError": %.12f,\n  "standardErrorOfChance": %.12f\n}\n',
            paste(R.version$major, R.version$minor, sep = "."), se(p, n), se(chance, n)))
