# A common rate with over-dispersion. R 4.2: Rscript quasi-poisson.R > ../rates/quasi-poisson.json
options(digits = 15)
events <- c(3, 0, 7, 1, 12, 2); km <- c(1200, 800, 1500, 950, 2100, 700)
fit <- glm(events ~ 1 + offset(log(km)), family = quasipoisson, epsilon = 1e-18, maxit = 100)
s <- summary(fit)
se <- s$coefficients[1, 2]; b <- coef(fit)[1]; t <- qt(0.975, 5)
cat(sprintf('{\n  "source": "tests/reference/scripts/quasi-poisson.R, R %s.%s",\n  "events": [%s],\n  "exposure": [%s],\n  "rate": %.15g,\n  "dispersion": %.12f,\n  "standardErrorOfLog": %.12f,\n  "lower": %.15g,\n  "upper": %.15g\n}\n',
            R.version$major, R.version$minor, paste(events, collapse = ", "), paste(km, collapse = ", "), exp(b), s$dispersion, se, exp(b - t * se), exp(b + t * se)))
