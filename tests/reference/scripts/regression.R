# Regressions of the censored location-scale likelihood by survival::survreg (rel.tolerance 1e-14) and, for failures and
# survivals only, by stats::glm (epsilon 1e-18). R 4.2.2, survival 3.5.3.
# Run: Rscript regression.R > ../regression/survreg.json
suppressMessages(library(survival))
num <- function(x) paste0("[", paste(ifelse(is.na(x), "null", ifelse(is.infinite(x), "null", sprintf("%.17g", x))), collapse = ", "), "]")
txt <- function(x) paste0("[", paste0('"', x, '"', collapse = ", "), "]")
control <- survreg.control(rel.tolerance = 1e-14, maxiter = 200)

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
data$lower <- lower; data$upper <- upper
left <- function(positive) if (positive) ifelse(is.infinite(lower), NA, lower) else ifelse(is.infinite(lower), NA, lower)
right <- ifelse(is.infinite(upper), NA, upper)
dists <- c(normal = "gaussian", lognormal = "lognormal", logistic = "logistic", weibull = "weibull")
formulas <- list(
  list(terms = '[]', f = ~ 1, strata = FALSE),
  list(terms = '[["construction"]]', f = ~ construction, strata = FALSE),
  list(terms = '[["construction"], ["pressure"]]', f = ~ construction + pressure, strata = FALSE),
  list(terms = '[["construction"], ["pressure"], ["construction", "pressure"]]', f = ~ construction * pressure, strata = FALSE),
  list(terms = '[["construction"], ["session"], ["pressure"]]', f = ~ construction + session + pressure, strata = FALSE),
  list(terms = '[["construction"], ["pressure"]]', f = ~ construction + pressure + strata(construction), strata = TRUE))
cases <- c()
for (law in names(dists)) for (m in formulas) {
  y <- Surv(left(TRUE), right, type = "interval2")
  fit <- survreg(update(m$f, y ~ .), data = data, dist = dists[[law]], control = control)
  k <- length(coef(fit))
  cases <- c(cases, sprintf('  { "law": "%s", "terms": %s, "scaleBy": %s, "effects": %s, "scales": %s, "standardErrors": %s, "logLikelihood": %.15g }',
    law, m$terms, if (m$strata) '"construction"' else "null", num(unname(coef(fit))), num(unname(fit$scale)),
    num(unname(sqrt(diag(vcov(fit))))), fit$loglik[2]))
}
# Failures and survivals only: glm with the level as a covariate; location = -(intercept + effects)/slope.
single <- data[is.infinite(lower) | is.infinite(upper), ]
single$level <- ifelse(is.infinite(single$lower), single$upper, single$lower)
single$failed <- as.numeric(is.infinite(single$lower))
glms <- c()
for (link in c("probit", "logit")) {
  fit <- glm(failed ~ level + construction + pressure, binomial(link), single, control = glm.control(epsilon = 1e-18, maxit = 100))
  b <- coef(fit)
  glms <- c(glms, sprintf('  { "law": "%s", "effects": %s, "scale": %.15g, "logLikelihood": %.15g }',
    c(probit = "normal", logit = "logistic")[link], num(unname(-b[-2] / b[2])), 1 / b[2], as.numeric(logLik(fit))))
}
cat('{ "source": "tests/reference/scripts/regression.R, R 4.2.2, survival 3.5.3; invented data",\n')
cat('"construction": ', txt(data$construction), ',\n"session": ', txt(data$session), ',\n"pressure": ', num(data$pressure),
    ',\n"lower": ', num(lower), ',\n"upper": ', num(upper), ',\n"survreg": [\n', paste(cases, collapse = ",\n"), '\n],\n"glm": [\n',
    paste(glms, collapse = ",\n"), "\n] }\n", sep = "")
