# The line through tread depths with its pointwise 95 % interval: predict.lm(interval = "confidence").
# R 4.2.2, stats. Readings invented: km and mm.
km <- c(0, 3, 6, 9)
mm <- c(3.0, 2.8, 2.58, 2.39)
fit <- lm(mm ~ km)
end <- (1 - coef(fit)[1]) / coef(fit)[2]
print(end, digits = 12)
print(predict(fit, data.frame(km = c(0, end / 2, end)), interval = "confidence"), digits = 12)
