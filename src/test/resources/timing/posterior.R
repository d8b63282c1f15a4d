# The posterior of both events by random-walk Metropolis in vectorised R, and the nearest ready-made fit (glmer).
# Arguments: patches.csv (event, lnd, lnf, board, without, with; with = 0: never), steps.
suppressMessages(library(lme4))
a <- commandArgs(TRUE)
all <- read.csv(a[1]); steps <- as.integer(a[2])
priors <- list(char = c(log(30), 0.4, 0.4, 0.6, 0.35), clearing = c(log(10), 0.7, 0.4, 0.8, 0.35))
gh <- function(n) { # Golub and Welsch, for a standard normal
  m <- matrix(0, n, n); i <- seq_len(n - 1); m[cbind(i, i + 1)] <- m[cbind(i + 1, i)] <- sqrt(i)
  e <- eigen(m); list(x = e$values, w = e$vectors[1, ]^2)
}
rule <- gh(15)
glmer_s <- mcmc_s <- ess <- c()
tau <- c()
for (event in names(priors)) {
  d <- all[all$event == event, ]; p <- priors[[event]]; lnf <- d$lnf - mean(d$lnf)
  seen <- d$with > 0
  logpost <- function(q) { # tau, phi, psi, ln sigma, ln omega
    phi <- q[2]; psi <- q[3]; s <- exp(q[4]); o <- exp(q[5])
    if (phi < 0 || psi < 0) return(-Inf)
    at <- function(n) (d$lnd + phi * lnf + psi * log(n) - q[1]) / s
    hi <- ifelse(seen, at(pmax(d$with, 1)), Inf); lo <- ifelse(d$without > 0, at(pmax(d$without, 1)), -Inf)
    u <- outer(rep(1, nrow(d)), rule$x * o / s)
    l <- log(pmax(plogis(hi - u) - plogis(lo - u), 1e-300))
    b <- rowsum(l, d$board); m <- apply(b, 1, max)
    sum(m + log(drop(exp(b - m) %*% rule$w))) +
      dnorm(q[1], p[1], 1.5, TRUE) + dnorm(phi, p[2], p[3], TRUE) + dnorm(psi, p[4], p[5], TRUE) +
      dnorm(q[4], log(0.25), 0.6, TRUE) + dnorm(o, 0, 0.2, TRUE) + q[5]
  }
  set.seed(1)
  mcmc_s <- c(mcmc_s, system.time({
    q <- c(p[1], p[2], p[4], log(0.25), log(0.1)); v <- logpost(q)
    S <- diag(c(0.1, 0.1, 0.1, 0.2, 0.4)); draws <- matrix(0, steps, 5)
    for (i in seq_len(steps)) {
      if (i %in% c(steps / 10, steps / 5)) S <- t(chol(cov(draws[(i / 2):(i - 1), ]) * 2.38^2 / 5 + diag(1e-6, 5)))
      n <- q + drop(S %*% rnorm(5)); w <- logpost(n)
      if (log(runif(1)) < w - v) { q <- n; v <- w }
      draws[i, ] <- q
    }
    kept <- draws[-seq_len(steps / 5), 1]
  })["elapsed"])
  k <- 50; size <- length(kept) %/% k
  means <- colMeans(matrix(kept[seq_len(k * size)], size))
  ess <- c(ess, length(kept) * var(kept) / (size * var(means)))
  tau <- c(tau, median(kept))
  readings <- rbind( # what a logistic fit sees of a patch: the last reading without the event, the first with it
    data.frame(y = 0, lnd = d$lnd, n = d$without, board = d$board)[d$without > 0, ],
    data.frame(y = 1, lnd = d$lnd, n = d$with, board = d$board)[seen, ])
  glmer_s <- c(glmer_s, system.time(suppressWarnings(suppressMessages(
    glmer(y ~ lnd + log(n) + (1 | board), readings, binomial, nAGQ = 15))))["elapsed"])
}
cat(sum(glmer_s), sum(mcmc_s), ess, tau, "\n")
