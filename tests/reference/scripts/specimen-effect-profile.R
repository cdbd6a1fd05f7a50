# Profile-likelihood intervals of the probit with a normal specimen effect: every integral by stats::integrate, the spreads
# by stats::optim at each level tried. Independent of the quadrature and the search under test. R 4.2.2.
# Run after specimen-effect-glmer.R: Rscript specimen-effect-profile.R > ../specimen-effect/profile.json
json <- paste(readLines("../specimen-effect/glmer.json"), collapse = "")
read <- function(name) {                               # the histories of a case, without a JSON library
  text <- sub(paste0('.*"name": "', name, '", "damage": 0,'), "", json)
  text <- sub('\\]\\]\\] \\}.*', "]", sub('.*?"histories": \\[', "", text, perl = TRUE))
  lapply(strsplit(text, "\\]\\s*,\\s*\\[\\[")[[1]], function(s) matrix(as.numeric(regmatches(s, gregexpr("[0-9.]+", s))[[1]]), ncol = 3, byrow = TRUE))
}
loglik <- function(h, mu, between, within) sum(sapply(h, function(m) {
  f <- function(u) sapply(u, function(v) exp(sum(pnorm((2 * m[, 2] - 1) * (m[, 1] - mu - between * v) / within, log.p = TRUE)) - v^2 / 2)) / sqrt(2 * pi)
  log(integrate(f, -8, 8, rel.tol = 1e-9, subdivisions = 500)$value)
}))
profile <- function(name, p) {
  h <- read(name); z <- qnorm(p)
  at <- function(level) {
    g <- function(q) { s <- exp(q); -loglik(h, level - z * sqrt(sum(s^2)), s[1], s[2]) }
    -optim(log(c(15, 25)), g, control = list(reltol = 1e-11, maxit = 500))$value
  }
  full <- optim(c(520, log(c(15, 25))), function(q) -loglik(h, q[1], exp(q[2]), exp(q[3])), control = list(reltol = 1e-12, maxit = 2000))
  centre <- full$par[1] + z * sqrt(sum(exp(full$par[2:3])^2))
  f <- function(level) at(level) + full$value + qchisq(0.95, 1) / 2
  lower <- uniroot(f, c(centre - 40, centre), tol = 1e-3)$root
  upper <- uniroot(f, c(centre, centre + 40), tol = 1e-3)$root
  sprintf('  { "name": "%s", "probability": %s, "lower": %.6f, "upper": %.6f, "logLikelihood": %.8f }', name, p, lower, upper, -full$value)
}
cat('{ "source": "tests/reference/scripts/specimen-effect-profile.R, R 4.2.2",\n"cases": [\n')
cat(paste(c(profile("20 specimens of 8 sites", 0.5), profile("20 specimens of 8 sites", 0.1)), collapse = ",\n"))
cat("\n] }\n")
