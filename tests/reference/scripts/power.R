# Power of a two-sample t test and the interval of a ratio by logarithms. R 4.2: Rscript power.R > ../comparison-tests/power.json
options(digits = 15)
values <- c(41.2, 44.8, 39.9, 46.1, 43.3, 40.4)
reference <- c(43.0, 41.7, 45.2, 42.1, 44.4)
p3 <- power.t.test(n = 8, delta = 3, sd = 2.5, strict = TRUE)$power
d80 <- power.t.test(n = 8, power = 0.8, sd = 2.5, strict = TRUE, tol = 1e-12)$delta
t <- t.test(log(values), log(reference), conf.level = 0.9)
ratio <- exp(mean(log(values)) - mean(log(reference)))
cat(sprintf('{\n  "source": "tests/reference/scripts/power.R, R %s.%s",\n  "powerAtThree": %.12f,\n  "differenceAtEighty": %.10f,\n  "values": [%s],\n  "reference": [%s],\n  "ratio": %.12f,\n  "lower": %.12f,\n  "upper": %.12f\n}\n',
            R.version$major, R.version$minor, p3, d80, paste(values, collapse = ", "), paste(reference, collapse = ", "),
            ratio, exp(t$conf.int[1]), exp(t$conf.int[2])))
