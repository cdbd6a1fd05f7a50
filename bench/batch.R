# Reads and fits the logs of bench/batch.mjs one by one in one process: Rscript bench/batch.R FOLDER [most logs] [fit|profile]
# read.csv, then probit regression of failed or survived on energy with glm at its default control, median and standard
# error from the coefficients. With "profile" also the 95 % profile interval of the median: the two energies at which twice
# the fall of the log-likelihood is 3.84, each found by uniroot over fits through that energy, at uniroot's own default
# tolerance. That is the same interval that tirelab prints, to fewer digits.
arguments <- commandArgs(trailingOnly = TRUE)
files <- sort(list.files(arguments[1], pattern = "[.]csv$", full.names = TRUE))
files <- files[seq_len(min(length(files), if (length(arguments) > 1) as.integer(arguments[2]) else length(files)))]
with_interval <- length(arguments) > 2 && arguments[3] == "profile"
critical <- qchisq(0.95, 1)
options(warn = -1) # fitted probabilities of 0 or 1 at far levels

analyse <- function(file) {
  log <- read.csv(file, check.names = FALSE)
  energy <- 8 * 9.80665 * log[["height [mm]"]] / 1000
  failed <- log$outcome == "failed"
  fit <- glm(failed ~ energy, family = binomial("probit"))
  b <- coef(fit)
  median <- -b[[1]] / b[[2]]
  gradient <- c(-1 / b[[2]], b[[1]] / b[[2]]^2)
  se <- sqrt(drop(gradient %*% vcov(fit) %*% gradient))
  if (!with_interval) return(c(median, se, NA, NA))
  # Through the energy m the line has no intercept: failed ~ 0 + (energy - m).
  fall <- function(m) {
    x <- energy - m
    glm(failed ~ 0 + x, family = binomial("probit"))$deviance - fit$deviance - critical
  }
  end <- function(side) {
    outer <- median + side * 3 * se
    for (i in 1:8) {
      if (fall(outer) > 0) return(uniroot(fall, sort(c(median, outer)))$root)
      outer <- median + side * 3 * se * 2^i
    }
    NA
  }
  c(median, se, end(-1), end(1))
}

elapsed <- system.time(found <- vapply(files, function(file) tryCatch(analyse(file), error = function(e) rep(NA_real_, 4)), numeric(4)))
cat(sprintf("%d logs %.3f s %.3f CPU s %s mean median %.6f R %s\n", length(files), elapsed[["elapsed"]],
  elapsed[["user.self"]] + elapsed[["sys.self"]], if (with_interval) "profile" else "fit", mean(found[1, ], na.rm = TRUE), getRversion()))
