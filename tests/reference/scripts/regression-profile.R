# Profile-likelihood intervals of a quantile under a setting of the covariates, for the data of regression.R: by stats::glm
# (failures and survivals only; the quantile is held by leaving out the intercept: offset(z) and the level measured from it)
# and by survival::survreg with an offset (the median, every kind of observation). Ends by uniroot to 1e-11.
# R 4.2.2, survival 3.5.3, jsonlite is not needed. Run in this folder:
#   Rscript regression-profile.R > ../regression/profile.json
suppressMessages(library(survival))
set.seed(4711)
n <- 60
data <- data.frame(construction = rep(c("K1", "K2", "K3"), each = n / 3),
                   pressure = rep(c(1.6, 2.0, 2.4, 2.8), n / 4),
                   session = rep(c("a", "b"), times = c(33, 27)))
strength <- 300 + c(K1 = 0, K2 = 60, K3 = 25)[data$construction] + 90 * data$pressure +
  ifelse(data$construction == "K2", 30, 0) * (data$pressure - 2.2) + rnorm(n) * 45
kind <- rep(c("drop", "drop", "series", "drop", "exact"), n / 5)
level <- 25 * round((strength + rnorm(n) * 40) / 25)
lower <- upper <- numeric(n)
for (i in seq_len(n)) {
  if (kind[i] == "drop") { if (level[i] >= strength[i]) { lower[i] <- -Inf; upper[i] <- level[i] } else { lower[i] <- level[i]; upper[i] <- Inf } }
  if (kind[i] == "series") { upper[i] <- 25 * ceiling(strength[i] / 25); lower[i] <- upper[i] - 25 }
  if (kind[i] == "exact") lower[i] <- upper[i] <- round(strength[i], 1)
}
# The setting: construction K2 at 2.1 bar.
data$k1 <- as.numeric(data$construction == "K1"); data$k3 <- as.numeric(data$construction == "K3")
data$p <- data$pressure - 2.1
crit <- qchisq(0.95, 1)
ends <- function(best, at, q0, width) {
  f <- function(q) 2 * (best - at(q)) - crit
  c(uniroot(f, c(q0 - width, q0), tol = 1e-11)$root, uniroot(f, c(q0, q0 + width), tol = 1e-11)$root)
}
num <- function(x) paste0("[", paste(sprintf("%.15g", x), collapse = ", "), "]")
cases <- c()
single <- data[is.infinite(lower) | is.infinite(upper), ]
single$level <- ifelse(is.infinite(lower), upper, lower)[is.infinite(lower) | is.infinite(upper)]
single$failed <- as.numeric(is.infinite(lower[is.infinite(lower) | is.infinite(upper)]))
control <- glm.control(epsilon = 1e-18, maxit = 200)
for (link in c("probit", "logit")) for (share in c(0.5, 0.1)) {
  z <- if (link == "probit") qnorm(share) else qlogis(share)
  full <- glm(failed ~ level + k1 + k3 + p, binomial(link), single, control = control)
  q0 <- (z - coef(full)[1]) / coef(full)[2]
  at <- function(q) { s <- single; s$x <- s$level - q; s$z <- z
    as.numeric(logLik(glm(failed ~ 0 + x + k1 + k3 + p + offset(z), binomial(link), s, control = control))) }
  cases <- c(cases, sprintf('  { "law": "%s", "only": "single", "probability": %g, "value": %.15g, "limits": %s }',
    c(probit = "normal", logit = "logistic")[link], share, q0, num(ends(as.numeric(logLik(full)), at, q0, 400))))
}
left <- ifelse(is.infinite(lower), NA, lower); right <- ifelse(is.infinite(upper), NA, upper)
y <- Surv(left, right, type = "interval2")
for (law in c("normal", "lognormal", "logistic")) {
  dist <- c(normal = "gaussian", lognormal = "lognormal", logistic = "logistic")[law]
  sc <- survreg.control(rel.tolerance = 1e-14, maxiter = 200)
  full <- survreg(y ~ k1 + k3 + p, data = data, dist = dist, control = sc)
  q0 <- coef(full)[[1]]
  at <- function(q) { data$q <- rep(q, n)
    survreg(y ~ 0 + k1 + k3 + p + offset(q), data = data, dist = dist, control = sc)$loglik[2] }
  found <- ends(full$loglik[2], at, q0, if (law == "lognormal") 0.4 else 200)
  back <- if (law == "lognormal") exp else identity
  cases <- c(cases, sprintf('  { "law": "%s", "only": "all", "probability": 0.5, "value": %.15g, "limits": %s }', law, back(q0), num(back(found))))
}
cat('{ "source": "tests/reference/scripts/regression-profile.R, R 4.2.2, survival 3.5.3; data of regression.R",\n"setting": { "construction": "K2", "pressure": 2.1 }, "level": 0.95,\n"cases": [\n', paste(cases, collapse = ",\n"), "\n] }\n", sep = "")
