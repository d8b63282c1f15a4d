# Independent check of the 5 % bounds in two-parameter models: brute force over the slope,
# the penalty straight from the 2 x 2 determinant, nothing shared with lib.R.
# Prints, per case: largest difference of the coefficients to a plain optim() maximum, and
# (profile statistic at the stored bound) - 2.705543, which must be 0 up to rounding.
suppressMessages(library(jsonlite))
args <- commandArgs(FALSE); here <- dirname(sub("^--file=", "", grep("^--file=", args, value = TRUE)))
chk <- function(file, fitid, x, y, m = NULL, p = 0.05) {
  d <- fromJSON(file.path(here, "..", file), simplifyVector = TRUE, simplifyDataFrame = FALSE)
  f <- Filter(function(z) z$id == fitid, d$fits)[[1]]
  e <- if (!is.null(f$ed05)) f$ed05 else f$ed; if (is.null(e$estimate)) e <- e[[1]]
  k <- d$data$columns; xx <- k[[x]]; yy <- k[[y]]; mm <- if (is.null(m)) rep(1, length(xx)) else k[[m]]
  if (!is.null(f$subset$family)) { s <- k$family == f$subset$family; xx <- xx[s]; yy <- yy[s]; mm <- mm[s] }
  ls <- function(a, b) { eta <- a + b * xx; pr <- 1 / (1 + exp(-eta)); w <- mm * pr * (1 - pr); det <- sum(w) * sum(w * xx^2) - sum(w * xx)^2
    if (!is.finite(det) || det <= 0) return(-1e10); sum(yy * eta - mm * log1p(exp(eta))) + 0.5 * log(det) }
  o <- optim(f$expected$coef * 0.9, function(b) -ls(b[1], b[2]), control = list(reltol = 1e-15, maxit = 5000))
  o <- optim(o$par, function(b) -ls(b[1], b[2]), method = "BFGS", control = list(reltol = 1e-15)); mx <- -o$value
  cc <- log(p / (1 - p)); g <- abs(o$par[2]) * c(-20, -8, -4, -2, -1.5, -1, -.7, -.4, -.2, -.1, -.03, .03, .1, .2, .4, .7, 1, 1.5, 2, 3, 4, 6, 8, 12, 20)
  prof <- function(x0) { v <- sapply(g, function(b) ls(cc - b * x0, b)); best <- -Inf
    for (i in order(-v)[1:5]) best <- max(best, optimize(function(b) ls(cc - b * x0, b), range(g[pmax(1, i - 1)], g[pmin(length(g), i + 1)]), maximum = TRUE, tol = 1e-12)$objective)
    2 * (mx - best) }
  out <- c(coef = max(abs(o$par - f$expected$coef)))
  for (s in c("lower", "upper")) { v <- e[[paste0("profile_", s, "_one_sided_95")]]; if (!is.null(v)) out[s] <- prof(v) - qchisq(0.9, 1) }
  stopifnot(out["coef"] < 1e-5, abs(out[-1]) < 1e-9)
  cat(sprintf("%-34s %-16s %s\n", file, fitid, paste(names(out), signif(out, 3), collapse = "  ")))
}
chk("bliss-1935/case.json", "firth_logit", "log10_dose", "killed", "exposed")
chk("dalal-1989/case.json", "firth_binary", "temperature_f", "any_distress")
for (z in list(c("complete", "x", "y_sep"), c("quasi", "x_tied", "y_quasi"), c("one_event_last", "x", "y_one"), c("all_events", "x_far", "y_all"))) chk("albert-1984/case.json", z[1], z[2], z[3])
for (f in c("A", "B", "C")) { chk("synthetic-patches-48/case.json", paste0("firth_family_", f), "log10_fluence", "charred"); chk("synthetic-patches-120/case.json", paste0("firth_family_", f), "log10_fluence", "charred") }
