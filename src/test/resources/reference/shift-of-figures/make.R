# Rebuilds trials.csv and expected.csv:   Rscript make.R      (plain R, no packages; some minutes)
#
# The passes-to-event model with a shift for each of three figures, written from its definition:
#   ln D + phi ln(F/F0) + psi ln n  >=  tau + d[figure] + omega z[board] + sigma e,  e logistic, z normal.
# The shifts d sum to zero; their prior is a multivariate t with four degrees of freedom such that
# any two differ by a t with scale 0.4. All else as in ../posterior-passes-to-event/make.prior.
# Sampled by the stretch move (Goodman and Weare 2010, Communications in Applied Mathematics and
# Computational Science 5:65-80) over all parameters and the boards' own shifts: no mode, no
# importance weights, no quadrature, and no code in common with the program.
RNGkind("Mersenne-Twister", "Inversion", "Rejection")
set.seed(20261129)

figures <- c("line", "circle", "spiral")
n <- 24; boards <- 4
power <- sample(c(30, 40, 50, 60, 70, 85, 100), n, TRUE); hand <- sample(c(12, 18, 27, 40), n, TRUE)
board <- (seq_len(n) - 1) %% boards
figure <- figures[c(1, 2, 1, 3, 2, 1)[1 + ((seq_len(n) - 1) %/% boards) %% 6]]
dose <- 200 * power / (60 * hand)                       # J/cm2 of a pass: 200 W, 60 mm wide
fluence <- 200 * power / 100 / 40000 / (pi * 0.06^2 / 4) # J/cm2: 40 kHz, spot 0.6 mm
f <- log(fluence) - mean(log(fluence))
came <- function(dose50, phi, psi, sigma, omega, shift) {
  z <- rnorm(boards)
  t <- (log(dose50) + shift[figure] + omega * z[board + 1] + sigma * rlogis(n) - log(dose) - phi * f) / psi
  pmax(1, ceiling(exp(t)))
}
charred <- came(26, 0.3, 0.6, 0.2, 0.15, c(line = 0, circle = -0.55, spiral = 0.1))
cleared <- came(9, 0.7, 0.8, 0.25, 0.1, c(line = 0, circle = 0, spiral = 0.3))
read_to <- pmin(6, charred)
trials <- data.frame(patch = seq_len(n), board = board, figure = figure, power_pct = power,
  hand_mm_s = hand, read_to = read_to, charred_at = ifelse(charred <= read_to, charred, 0),
  cleared_at = ifelse(cleared <= read_to, cleared, 0))
write.csv(trials, "trials.csv", row.names = FALSE, quote = FALSE)

log_posterior <- function(x, at, prior) {               # x: walkers in rows
  tau <- x[, 1]; phi <- x[, 2]; psi <- x[, 3]; s <- exp(x[, 4]); omega <- x[, 5]
  d <- cbind(x[, 6], x[, 7], -x[, 6] - x[, 7]); z <- x[, 7 + seq_len(boards), drop = FALSE]
  ok <- phi >= 0 & psi >= 0 & omega >= 0
  lp <- -((tau - prior$tau[1]) / prior$tau[2])^2 / 2 - ((phi - prior$phi[1]) / prior$phi[2])^2 / 2 -
    ((psi - prior$psi[1]) / prior$psi[2])^2 / 2 - ((x[, 4] - log(0.25)) / 0.6)^2 / 2 -
    (omega / 0.2)^2 / 2 - rowSums(z^2) / 2 -
    (4 + 2) / 2 * log1p(rowSums(d^2) / (0.4^2 / 2) / 4)
  for (i in seq_len(n)) {
    m <- log(dose[i]) + phi * f[i] - tau - d[, match(figure[i], figures)] - omega * z[, board[i] + 1]
    before <- if (at[i] == 0) read_to[i] else at[i] - 1
    lo <- if (before == 0) 0 else plogis((m + psi * log(before)) / s)
    hi <- if (at[i] == 0) 1 else plogis((m + psi * log(at[i])) / s)
    lp <- lp + log(pmax(hi - lo, 1e-300))
  }
  ifelse(ok, lp, -Inf)
}

sample_posterior <- function(at, prior, walkers = 600, steps = 24000, burn = 4000) {
  k <- 7 + boards
  x <- cbind(rnorm(walkers, prior$tau[1], 0.3), abs(rnorm(walkers, prior$phi[1], 0.1)), abs(rnorm(walkers, prior$psi[1], 0.1)),
    rnorm(walkers, log(0.25), 0.2), abs(rnorm(walkers, 0, 0.1)), matrix(rnorm(2 * walkers, 0, 0.1), walkers), matrix(rnorm(boards * walkers), walkers))
  lp <- log_posterior(x, at, prior); kept <- list(); halves <- split(seq_len(walkers), rep(1:2, each = walkers / 2))
  for (step in seq_len(steps)) {
    for (h in 1:2) {
      me <- halves[[h]]; other <- sample(halves[[3 - h]], length(me), TRUE)
      stretch <- (runif(length(me)) + 1)^2 / 2
      y <- x[other, ] + stretch * (x[me, ] - x[other, ]); ly <- log_posterior(y, at, prior)
      take <- log(runif(length(me))) < (k - 1) * log(stretch) + ly - lp[me]
      x[me[take], ] <- y[take, ]; lp[me[take]] <- ly[take]
    }
    if (step > burn && step %% 20 == 0) kept[[length(kept) + 1]] <- x[, 1:7]
  }
  do.call(rbind, kept)
}

rows <- list()
for (event in c("char", "clearing")) {
  at <- if (event == "char") trials$charred_at else trials$cleared_at
  prior <- if (event == "char") list(tau = c(log(30), 1.5), phi = c(0.4, 0.4), psi = c(0.6, 0.35)) else
    list(tau = c(log(10), 1.5), phi = c(0.7, 0.4), psi = c(0.8, 0.35))
  x <- sample_posterior(at, prior)
  of <- list(tau_line = x[, 1] + x[, 6], circle_over_line = x[, 7] - x[, 6], spiral_over_line = -2 * x[, 6] - x[, 7],
    phi = x[, 2], psi = x[, 3], sigma = exp(x[, 4]), omega = x[, 5])
  half <- seq_len(nrow(x)) <= nrow(x) / 2
  for (name in names(of)) {
    q <- quantile(of[[name]], c(0.05, 0.5, 0.95), names = FALSE)
    between <- max(abs(quantile(of[[name]][half], c(0.05, 0.5, 0.95)) - quantile(of[[name]][!half], c(0.05, 0.5, 0.95))))
    rows[[length(rows) + 1]] <- data.frame(event = event, quantity = name, q05 = q[1], q50 = q[2], q95 = q[3], between_halves = between)
  }
}
write.csv(format(do.call(rbind, rows), digits = 5), "expected.csv", row.names = FALSE, quote = FALSE)
