# Probit with a normal specimen effect by lme4::glmer, nAGQ = 25, control tightened, and checked by a second optimiser.
# R 4.2.2, lme4 1.1.31. Run: Rscript specimen-effect-glmer.R > ../specimen-effect/glmer.json
suppressMessages(library(lme4))
num <- function(x) paste0("[", paste(sprintf("%.15g", x), collapse = ", "), "]")
series <- function(n, start, step, between, within, top = 1000) {
  do.call(rbind, lapply(seq_len(n), function(i) {
    b <- rnorm(1, 0, between); h <- start; k <- 0; rows <- NULL
    repeat {
      failed <- h > 500 + b + rnorm(1, 0, within)
      rows <- rbind(rows, data.frame(specimen = i, level = h, failed = as.numeric(failed), earlier = k))
      if (failed || h >= top) return(rows)
      h <- h + step; k <- k + 1
    }
  }))
}
sites <- function(n, m, levels, between, within) {
  do.call(rbind, lapply(seq_len(n), function(i) {
    b <- rnorm(1, 0, between); h <- sample(levels, m, replace = TRUE)
    data.frame(specimen = i, level = h, failed = as.numeric(h > 500 + b + rnorm(m, 0, within)), earlier = seq_len(m) - 1)
  }))
}
case <- function(name, d, damage = 0) {
  d$fresh <- d$level / (1 - damage)^d$earlier
  centre <- mean(d$fresh); unit <- sd(d$fresh)
  d$x <- (d$fresh - centre) / unit
  fits <- list(
    glmer(failed ~ x + (1 | specimen), d, binomial("probit"), nAGQ = 25, control = glmerControl(optimizer = "bobyqa",
      optCtrl = list(rhobeg = 2e-3, rhoend = 1e-10, maxfun = 1e6), tolPwrss = 1e-13)),
    glmer(failed ~ x + (1 | specimen), d, binomial("probit"), nAGQ = 25, control = glmerControl(optimizer = "Nelder_Mead",
      optCtrl = list(FtolAbs = 1e-14, FtolRel = 1e-16, XtolRel = 1e-12, maxfun = 1e6), tolPwrss = 1e-13)))
  values <- sapply(fits, function(f) {
    b <- fixef(f)[[2]] / unit; theta <- getME(f, "theta")[[1]]
    c(centre - fixef(f)[[1]] / b, theta / b, 1 / b, deviance(f))
  })
  message(name, ": the optimisers agree to ", signif(max(abs(values[1:3, 1] / values[1:3, 2] - 1)), 2))
  best <- fits[[which.min(sapply(fits, function(f) -2 * logLik(f)))]]
  b <- fixef(best)[[2]] / unit; theta <- getME(best, "theta")[[1]]; a <- fixef(best)[[1]]
  histories <- sapply(split(d, d$specimen), function(s) paste0("[", paste(sprintf("[%s, %d, %d]", format(s$level, trim = TRUE), s$failed, s$earlier), collapse = ", "), "]"))
  v <- vcov(best, use.hessian = TRUE)                     # of (intercept, slope) in units of x, theta taken into account
  g <- c(-unit / fixef(best)[[2]], unit * a / fixef(best)[[2]]^2)
  se <- sqrt(as.numeric(t(g) %*% as.matrix(v) %*% g))
  sprintf('  { "name": "%s", "damage": %s, "location": %.12g, "between": %.12g, "within": %.12g, "standardError": %.8g,\n    "histories": [%s] }',
    name, damage, centre - a / b, theta / b, 1 / b, se, paste(histories, collapse = ",\n      "))
}
# The same model with the share of the variance between specimens held, by minimising lme4's own deviance function over
# the fixed effects: single rising-height series tell too little of the share for two optimisers to agree on it.
held <- function(name, d, share) {
  centre <- mean(d$level); unit <- sd(d$level)
  d$x <- (d$level - centre) / unit
  theta <- sqrt(share / (1 - share))
  f <- glmer(failed ~ x + (1 | specimen), d, binomial("probit"), nAGQ = 25, devFunOnly = TRUE, control = glmerControl(tolPwrss = 1e-11))
  start <- coef(glm(failed ~ x, binomial("probit"), d)) * sqrt(1 + theta^2)
  g <- function(beta) tryCatch(f(c(theta, beta)), error = function(e) 1e6)
  best <- optim(start, g, method = "BFGS", control = list(reltol = 1e-16, maxit = 1000))
  again <- nlm(g, best$par, gradtol = 1e-10, steptol = 1e-12)
  message(name, " at share ", share, ": the optimisers agree to ", signif(max(abs(best$par / again$estimate - 1)), 2))
  beta <- again$estimate
  histories <- sapply(split(d, d$specimen), function(s) paste0("[", paste(sprintf("[%s, %d, %d]", format(s$level, trim = TRUE), s$failed, s$earlier), collapse = ", "), "]"))
  sprintf('  { "name": "%s", "share": %s, "location": %.12g, "totalSpread": %.12g,\n    "histories": [%s] }', name, share,
    centre - beta[1] * unit / beta[2], unit / beta[2] * sqrt(1 + theta^2), paste(histories, collapse = ",\n      "))
}
several <- function(n, m, ...) do.call(rbind, lapply(seq_len(n), function(i) {
  b <- rnorm(1, 0, 30); k <- 0; rows <- NULL
  for (site in seq_len(m)) { h <- 400; repeat {
    failed <- h > (500 + b + rnorm(1, 0, 30)) * 0.99^k
    rows <- rbind(rows, data.frame(specimen = i, level = h, failed = as.numeric(failed), earlier = k)); k <- k + 1
    if (failed) break
    h <- h + 25 } }
  rows }))
set.seed(20); d1 <- series(12, 350, 25, 30, 30)
set.seed(21); d2 <- sites(20, 8, seq(440, 560, 20), 30, 20)
set.seed(22); d3 <- several(24, 4)
set.seed(25); d4 <- sites(12, 10, seq(420, 580, 20), 20, 35)
set.seed(26); d5 <- series(40, 350, 25, 30, 30)
cat('{ "source": "tests/reference/scripts/specimen-effect-glmer.R, R 4.2.2, lme4 1.1.31; invented data; hits as [level, failed, earlier hits]",\n"cases": [\n')
cat(paste(c(case("20 specimens of 8 sites", d2), case("12 specimens of 10 sites", d4),
  case("4 rising-height series on each of 24 specimens, damage 1 percent a hit", d3, 0.01),
  case("20 specimens of 8 sites, damage 2 percent a hit", d2, 0.02)), collapse = ",\n"))
cat('\n],\n"held": [\n')
cat(paste(c(held("12 rising-height series", d1, 0.3), held("12 rising-height series", d1, 0.8),
  held("40 rising-height series", d5, 0.5)), collapse = ",\n"))
cat("\n] }\n")
