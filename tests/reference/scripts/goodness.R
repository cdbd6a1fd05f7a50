# Deviance and Pearson statistics of grouped probit and logit fits by glm (epsilon 1e-14), with the fitted location and
# scale. Menarche: MASS (Milicer and Szczotka 1966); beetles: Bliss 1935. R 4.2.2, MASS 7.3.58.
# Run: Rscript goodness.R > ../goodness/grouped.json
suppressMessages(library(MASS))
case <- function(name, x, r, n, link) {
  f <- glm(cbind(r, n - r) ~ x, binomial(link), control = glm.control(epsilon = 1e-14, maxit = 100))
  b <- coef(f)
  e <- cbind(n * fitted(f), n * (1 - fitted(f)))
  sprintf('  { "name": "%s", "law": "%s", "levels": [%s], "failures": [%s], "drops": [%s], "location": %.15g, "scale": %.15g,\n    "deviance": %.12g, "pearson": %.12g, "degrees": %d, "pDeviance": %.10g, "pPearson": %.10g, "below5": %d, "below1": %d }',
    name, c(probit = "normal", logit = "logistic")[link], toString(x), toString(r), toString(n), -b[1] / b[2], 1 / b[2],
    deviance(f), sum(residuals(f, "pearson")^2), df.residual(f), pchisq(deviance(f), df.residual(f), lower = FALSE),
    pchisq(sum(residuals(f, "pearson")^2), df.residual(f), lower = FALSE), sum(e < 5), sum(e < 1))
}
beetle <- list(x = c(1.6907, 1.7242, 1.7552, 1.7842, 1.8113, 1.8369, 1.8610, 1.8839), r = c(6, 13, 18, 28, 52, 53, 61, 60), n = c(59, 60, 62, 56, 63, 59, 62, 60))
cat('{ "source": "tests/reference/scripts/goodness.R, R 4.2.2, MASS", "cases": [\n')
cat(paste(c(case("beetles", beetle$x, beetle$r, beetle$n, "probit"), case("beetles", beetle$x, beetle$r, beetle$n, "logit"),
  case("menarche", menarche$Age, menarche$Menarche, menarche$Total, "probit")), collapse = ",\n"))
cat("\n] }\n")
