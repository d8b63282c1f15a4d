# Shared routines for the reference cases. Plain R; needs jsonlite and numDeriv.
# Everything here is written from the definitions (penalised likelihood, Fieller's
# theorem, Laplace approximation, ...) and cross-checked in the make scripts
# against brglm2, MASS, lme4 and survival.
suppressWarnings(suppressMessages({ library(jsonlite); library(numDeriv) }))
options(digits = 15, contrasts = c("contr.treatment", "contr.poly"), warn = 1)
RNGkind("Mersenne-Twister", "Inversion", "Rejection")

q2_95 <- qchisq(0.95, 1)   # 3.84145882069412 : two-sided 95 %
q1_95 <- qchisq(0.90, 1)   # 2.70554345409542 : one-sided 95 % (signed root 1.644854)

log1pexp <- function(x) ifelse(x > 0, x + log1p(exp(-x)), log1p(exp(x)))

# ---------------------------------------------------------------- Firth / Jeffreys
# y events out of m trials per row; pen = TRUE adds 0.5*log det(X' W X).
# The value leaves out binomial coefficients.
ploglik <- function(beta, X, y, m = 1, pen = TRUE) {
  eta <- drop(X %*% beta)
  l <- sum(y * eta - m * log1pexp(eta))
  if (!pen) return(l)
  W <- m * plogis(eta) * plogis(-eta)
  d <- determinant(crossprod(X * sqrt(W)), logarithm = TRUE)
  l + 0.5 * as.numeric(d$modulus)
}
pscore <- function(beta, X, y, m = 1, pen = TRUE) {
  eta <- drop(X %*% beta); p <- plogis(eta)
  W <- m * p * plogis(-eta)
  XW <- X * sqrt(W)
  I <- crossprod(XW)
  r <- y - m * p
  if (pen) {
    h <- rowSums((XW %*% solve(I)) * XW)
    r <- r + h * (0.5 - p)
  }
  list(U = drop(crossprod(X, r)), I = I)
}
# maximise subject to a'beta = cval (a = NULL: no constraint)
pmax_fit <- function(X, y, m = 1, a = NULL, cval = NULL, start = NULL, pen = TRUE, maxit = 2000) {
  k <- ncol(X)
  m <- rep(m, length.out = nrow(X))
  if (is.null(a)) {
    Z <- diag(k); b <- if (is.null(start)) rep(0, k) else start
  } else {
    a <- as.numeric(a)
    Z <- if (k > 1) qr.Q(qr(matrix(a, ncol = 1)), complete = TRUE)[, -1, drop = FALSE] else matrix(0, 1, 0)
    b0 <- a * cval / sum(a^2)
    b <- if (is.null(start)) b0 else b0 + drop(Z %*% crossprod(Z, start - b0))
  }
  l <- ploglik(b, X, y, m, pen)
  it <- 0
  if (ncol(Z) > 0) repeat {
    it <- it + 1
    s <- pscore(b, X, y, m, pen)
    g <- drop(crossprod(Z, s$U))
    st <- drop(Z %*% solve(crossprod(Z, s$I %*% Z), g))
    mx <- max(abs(st)); if (mx > 5) st <- st * 5 / mx
    f <- 1; ok <- FALSE
    for (h in 0:40) {
      bn <- b + f * st; ln <- tryCatch(ploglik(bn, X, y, m, pen), error = function(e) -Inf)
      if (is.finite(ln) && ln >= l - 1e-13 * (1 + abs(l))) { ok <- TRUE; break }
      f <- f / 2
    }
    if (!ok) break
    b <- bn; l <- ln
    if (max(abs(f * st)) < 1e-14 * (1 + max(abs(b))) || max(abs(g)) < 1e-14 * (1 + nrow(X))) break
    if (it >= maxit) break
  }
  s <- pscore(b, X, y, m, pen)
  list(beta = b, loglik = l, I = s$I, score = if (ncol(Z)) max(abs(crossprod(Z, s$U))) else 0, it = it)
}
# The constrained penalised likelihood can have two local maxima (seen with 8 rows),
# so the profile is the best of several starts.
pmax_best <- function(X, y, m, a, cval, starts, pen) {
  best <- NULL
  for (s in starts) {
    f <- tryCatch(pmax_fit(X, y, m, a, cval, start = s, pen = pen), error = function(e) NULL)
    if (!is.null(f) && is.finite(f$loglik) && (is.null(best) || f$loglik > best$loglik)) best <- f
  }
  if (is.null(best)) stop("no constrained fit")
  best
}
# deterministic spread of starts around b: b_j * exp(scale * normal quantile of a Kronecker sequence)
spread <- function(b, k, scale = 1.2) {
  ir <- sqrt(c(2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37))[seq_along(b)]
  lapply(seq_len(k), function(i) b * exp(scale * qnorm(pmin(pmax((i * ir) %% 1, 0.02), 0.98))) * (if (i %% 4 == 0) -1 else 1))
}
root <- function(f, lo, hi) uniroot(f, c(lo, hi), tol = 1e-13, maxiter = 500)$root

# walk outwards from x0 in direction dir until g(x) > 0, then solve g = 0
walk <- function(g, x0, step, dir, maxmult = 1e9) {
  lo <- x0; s <- step
  repeat {
    hi <- x0 + dir * s
    v <- tryCatch(g(hi), error = function(e) NA)
    if (is.na(v)) return(list(value = NULL, status = "failed"))
    if (v > 0) {
      r <- root(g, min(lo, hi), max(lo, hi))
      return(list(value = r, status = "finite", resid = g(r)))
    }
    lo <- hi
    s <- s * 1.35
    if (s > step * maxmult) return(list(value = NULL, status = "unbounded"))
  }
}
profile_coef <- function(fit, X, y, m, j, q, dir, pen = TRUE) {
  a <- replace(rep(0, ncol(X)), j, 1)
  hist <- list(list(v = fit$beta[j], b = fit$beta)); small <- nrow(X) <= 500
  best_at <- function(v, extra = list()) {
    st <- c(lapply(hist, `[[`, "b"), list(fit$beta), extra)
    if (length(hist) > 1) {   # straight-line continuation of the branch
      h1 <- hist[[1]]; h2 <- hist[[2]]
      if (abs(h1$v - h2$v) > 1e-9) st <- c(list(h1$b + (h1$b - h2$b) * (v - h1$v) / (h1$v - h2$v)), st)
    }
    if (small) st <- c(st, list(0 * fit$beta, fit$beta * 2), spread(fit$beta, 8))
    pmax_best(X, y, m, a, v, st, pen)
  }
  g <- function(v) {
    f <- best_at(v)
    hist <<- head(c(list(list(v = v, b = f$beta)), hist), 3)
    2 * (fit$loglik - f$loglik) - q
  }
  se <- sqrt(solve(fit$I)[j, j])
  w <- walk(g, fit$beta[j], 0.3 * se, dir, maxmult = 1e5)
  if (w$status == "finite" && small) {   # no better constrained maximum from 40 further starts
    f <- best_at(w$value, spread(fit$beta, 40, 2))
    if (abs(2 * (fit$loglik - f$loglik) - q) > 1e-6) stop("profile limit of coefficient ", j, " is not on the global profile: ", 2 * (fit$loglik - f$loglik) - q)
  }
  w
}
# one firth (or ML when pen = FALSE) fit with profile limits
firth_block <- function(X, y, m = 1, pen = TRUE, profile = TRUE) {
  f <- pmax_fit(X, y, m, pen = pen)
  if (f$score > 1e-8 * (1 + nrow(X) / 100)) stop("no convergence, score ", f$score)
  V <- solve(f$I); k <- ncol(X); nm <- colnames(X)
  out <- list(terms = nm, coef = unname(f$beta), se_information = unname(sqrt(diag(V))),
              vcov = unname(V),
              loglik_kernel = ploglik(f$beta, X, y, m, FALSE),
              max_abs_score_at_solution = f$score)
  if (pen) out$penalised_loglik <- f$loglik
  if (profile) {
    lo <- hi <- vector("list", k); lrt <- numeric(k)
    for (j in 1:k) {
      L <- profile_coef(f, X, y, m, j, q2_95, -1, pen); H <- profile_coef(f, X, y, m, j, q2_95, 1, pen)
      if (L$status != "finite" || H$status != "finite") stop("profile limit not finite for ", nm[j])
      stopifnot(abs(L$resid) < 1e-8 * (1 + abs(f$loglik)), abs(H$resid) < 1e-8 * (1 + abs(f$loglik)))
      lo[[j]] <- L$value; hi[[j]] <- H$value
      a <- replace(rep(0, k), j, 1)
      lrt[j] <- 2 * (f$loglik - pmax_fit(X, y, m, a, 0, start = f$beta, pen = pen)$loglik)
    }
    nmp <- if (pen) "profile_penalised" else "profile"
    out[[paste0(nmp, "_ci95_lower")]] <- unlist(lo)
    out[[paste0(nmp, "_ci95_upper")]] <- unlist(hi)
    out[[if (pen) "penalised_lr_chisq" else "lr_chisq"]] <- lrt
    out[[if (pen) "penalised_lr_p" else "lr_p"]] <- pchisq(lrt, 1, lower.tail = FALSE)
  }
  list(fit = f, out = out)
}
# Inverse estimation: value of column jx at which risk = p, other columns at 'ref'
# (ref: full-length vector, intercept 1; entry jx is ignored).
ed_block <- function(fit, X, y, m = 1, jx, ref, p = 0.05, pen = TRUE, check = TRUE) {
  cc <- qlogis(p); b <- fit$beta
  av <- function(x) replace(ref, jx, x)
  rest <- sum(replace(ref, jx, 0) * b)
  xhat <- (cc - rest) / b[jx]
  V <- solve(fit$I); grad <- -av(xhat) / b[jx]
  se <- sqrt(drop(t(grad) %*% V %*% grad))
  cur <- fit$beta
  j1 <- which(ref == 1 & seq_along(ref) != jx)[1]   # the intercept (or the level's own intercept)
  small <- nrow(X) <= 500; hist <- list()
  dev <- function(x, target = cc, extra = 0) {
    slopes <- if (small) b[jx] * c(-1, 0, 0.25, 1, 2, 4) else b[jx]
    onto <- function(v) { v[j1] <- v[j1] + target - sum(av(x) * v); v }
    st <- c(list(cur), lapply(slopes, function(s) onto(replace(b, jx, s))), lapply(hist, function(h) onto(h$b)))
    if (length(hist) > 1 && abs(hist[[1]]$x - hist[[2]]$x) > 1e-9)
      st <- c(list(hist[[1]]$b + (hist[[1]]$b - hist[[2]]$b) * (x - hist[[1]]$x) / (hist[[1]]$x - hist[[2]]$x)), st)
    if (extra > 0) st <- c(st, lapply(spread(b, extra, 2), onto))
    sc <- max(1, abs(x))
    f <- pmax_best(X, y, m, av(x) / sc, target / sc, st, pen)
    cur <<- f$beta; hist <<- head(c(list(list(x = x, b = f$beta)), hist), 3)
    2 * (fit$loglik - f$loglik)
  }
  a0 <- replace(rep(0, ncol(X)), jx, 1)
  lim <- 2 * (fit$loglik - pmax_fit(X, y, m, a0, 0, start = fit$beta, pen = pen)$loglik)
  step <- min(0.3 * se, 2 * diff(range(X[, jx])))
  bd <- function(q, dir) {
    cur <<- fit$beta; hist <<- list()
    w <- walk(function(x) dev(x) - q, xhat, step, dir)
    if (w$status == "finite" && small) {
      r <- dev(w$value, extra = 40) - q
      if (abs(r) > 1e-6 || abs(w$resid) > 1e-6) stop("ED bound is not on the global profile: ", r, " / ", w$resid)
    }
    w
  }
  L1 <- bd(q1_95, -1); U1 <- bd(q1_95, 1); L2 <- bd(q2_95, -1); U2 <- bd(q2_95, 1)
  fie <- fieller_glm(b, V, jx, ref, cc)
  res <- list(risk = p, x_column = colnames(X)[jx], slope_sign = sign(b[jx]), estimate = xhat,
    se_delta = se,
    profile_lower_one_sided_95 = L1$value, profile_lower_one_sided_95_status = L1$status,
    profile_upper_one_sided_95 = U1$value, profile_upper_one_sided_95_status = U1$status,
    profile_lower_two_sided_95 = L2$value, profile_lower_two_sided_95_status = L2$status,
    profile_upper_two_sided_95 = U2$value, profile_upper_two_sided_95_status = U2$status,
    lr_chisq_slope_zero = lim,
    delta_lower_one_sided_95 = xhat - qnorm(0.95) * se,
    fieller_one_sided_95 = fie)
  # check by the dual definition: at the bound the profile upper limit of the risk equals p
  if (check && L1$status == "finite") {
    aL <- av(L1$value); cur <- fit$beta; hist <- list()
    eta <- walk(function(e) { hist <<- list(); dev(L1$value, e) - q1_95 }, sum(aL * b), 0.3 * sqrt(drop(t(aL) %*% V %*% aL)), sign(b[jx]))
    if (eta$status != "finite" || abs(eta$value - cc) > 1e-5 * max(1, abs(L1$value))) stop("dual check failed: ", format(eta$value), " vs ", cc)
  }
  res
}
fieller_glm <- function(b, V, jx, ref, cc, z = qnorm(0.95)) {
  # (c - r'b)/b_x ; r = ref with x set to 0. Solve (r'b + b_x x - c)^2 = z^2 (v11 + 2 v12 x + v22 x^2)
  r <- replace(ref, jx, 0)
  e <- replace(rep(0, length(b)), jx, 1)
  n0 <- sum(r * b) - cc; v11 <- drop(t(r) %*% V %*% r); v12 <- drop(t(r) %*% V %*% e); v22 <- V[jx, jx]
  A <- b[jx]^2 - z^2 * v22; B <- 2 * (b[jx] * n0 - z^2 * v12); C <- n0^2 - z^2 * v11
  D <- B^2 - 4 * A * C
  g <- z^2 * v22 / b[jx]^2
  if (A > 0 && D >= 0) { s <- sort((-B + c(-1, 1) * sqrt(D)) / (2 * A)); list(g = g, status = "finite", lower = s[1], upper = s[2]) }
  else list(g = g, status = if (D >= 0) "exclusive" else "whole_line", lower = NULL, upper = NULL)
}
# ---------------------------------------------------------------- goodness of fit
hl_stat <- function(y, p, grp) {
  o <- tapply(y, grp, sum); e <- tapply(p, grp, sum); n <- tapply(y, grp, length)
  keep <- !is.na(n); o <- o[keep]; e <- e[keep]; n <- n[keep]
  st <- sum((o - e)^2 / (e * (1 - e / n))); G <- length(n)
  list(groups = G, chisq = st, df = G - 2, p_value = pchisq(st, G - 2, lower.tail = FALSE),
       group_n = as.integer(n), observed_events = as.numeric(o), expected_events = as.numeric(e))
}
hosmer_lemeshow <- function(y, p, g = 10) {
  br <- unique(quantile(p, seq(0, 1, 1 / g), type = 7))
  list(
    quantile_cut = c(list(definition = sprintf("cut points = sample quantiles (R type 7, linear interpolation at (n-1)p+1) of the fitted risks at 0, 1/%d, ..., 1; duplicated cut points dropped; groups closed on the right, the lowest also on the left; df = groups - 2", g)),
      hl_stat(y, p, cut(p, br, include.lowest = TRUE))),
    rank_split = c(list(definition = sprintf("rows sorted by fitted risk, ties in order of appearance; row of rank r goes to group ceiling(%d r / n); df = groups - 2", g)),
      hl_stat(y, p, ceiling(g * rank(p, ties.method = "first") / length(p)))))
}
gof_binary <- function(y, p, g = 10, hl = TRUE) {
  o <- list(deviance = -2 * sum(y * log(p) + (1 - y) * log1p(-p)),
    pearson_chisq = sum((y - p)^2 / (p * (1 - p))),
    brier = mean((y - p)^2), log_loss_mean = -mean(y * log(p) + (1 - y) * log1p(-p)))
  r <- rank(p); n1 <- sum(y); n0 <- sum(1 - y)
  if (n1 > 0 && n0 > 0) o$auc <- (sum(r[y == 1]) - n1 * (n1 + 1) / 2) / (n1 * n0)
  if (hl) o$hosmer_lemeshow <- hosmer_lemeshow(y, p, g)
  o
}
loo_binary <- function(X, y, pen = TRUE) {
  n <- nrow(X)
  p <- sapply(1:n, function(i) {
    f <- pmax_fit(X[-i, , drop = FALSE], y[-i], 1, pen = pen)
    if (f$score > 1e-7) stop("loo no convergence at ", i)
    plogis(sum(X[i, ] * f$beta))
  })
  list(definition = "row i's risk predicted by the fit to the other n-1 rows (full refit, no shortcut)",
       predicted = p, brier = mean((y - p)^2), log_loss_mean = -mean(y * log(p) + (1 - y) * log1p(-p)),
       misclassified_at_half = sum((p > 0.5) != (y == 1)))
}
# ---------------------------------------------------------------- grouped GLM, any link
glm_block <- function(form, data, link = "logit", ed = NULL) {
  mod <- suppressWarnings(glm(form, binomial(link), data, control = list(epsilon = 1e-15, maxit = 300)))   # runs to rounding, hence 'did not converge'
  s <- summary(mod)$coefficients
  o <- list(link = link, terms = names(coef(mod)), coef = unname(coef(mod)), se = unname(s[, 2]), z = unname(s[, 3]), p = unname(s[, 4]),
    vcov = unname(vcov(mod)), deviance = deviance(mod), df_residual = df.residual(mod), null_deviance = mod$null.deviance,
    df_null = mod$df.null, loglik_with_constants = as.numeric(logLik(mod)), aic = AIC(mod),
    pearson_chisq = sum(residuals(mod, "pearson")^2))
  if (!is.null(ed)) {
    lk <- make.link(link); V <- vcov(mod); b <- coef(mod)
    o$ed <- lapply(ed, function(p) {
      cc <- lk$linkfun(p); x <- unname((cc - b[1]) / b[2]); gr <- -c(1, x) / b[2]
      list(risk = p, estimate = x, se_delta = sqrt(drop(t(gr) %*% V %*% gr)),
           fieller_two_sided_95 = fieller_glm(b, V, 2, c(1, 0), cc, z = qnorm(0.975)))
    })
  }
  list(mod = mod, out = o)
}
# ---------------------------------------------------------------- linear regression, x-intercept
lin_block <- function(x, y, level1 = 0.95) {
  m <- lm(y ~ x); s <- summary(m); V <- vcov(m); b <- coef(m); df <- df.residual(m)
  fie <- function(tq) {
    A <- b[2]^2 - tq^2 * V[2, 2]; B <- 2 * (b[1] * b[2] - tq^2 * V[1, 2]); C <- b[1]^2 - tq^2 * V[1, 1]
    D <- B^2 - 4 * A * C; g <- unname(tq^2 * V[2, 2] / b[2]^2)
    if (A > 0) { r <- sort(unname((-B + c(-1, 1) * sqrt(D)) / (2 * A))); list(t = tq, g = g, status = "finite", lower = r[1], upper = r[2]) }
    else list(t = tq, g = g, status = if (D >= 0) "exclusive" else "whole_line", lower = NULL, upper = NULL,
              exclusive_roots = if (D >= 0) sort(unname((-B + c(-1, 1) * sqrt(D)) / (2 * A))) else NULL)
  }
  th <- unname(-b[1] / b[2]); gr <- c(-1 / b[2], b[1] / b[2]^2)
  list(mod = m, out = list(intercept = unname(b[1]), slope = unname(b[2]), se_intercept = s$coefficients[1, 2], se_slope = s$coefficients[2, 2],
    cov_intercept_slope = V[1, 2], residual_sd = s$sigma, df_residual = df, r_squared = s$r.squared,
    rss = sum(residuals(m)^2),
    x_intercept = list(definition = "-intercept/slope, i.e. the x at which the fitted line is 0", estimate = th,
      se_delta = sqrt(drop(t(gr) %*% V %*% gr)),
      fieller_two_sided_95 = fie(qt(0.975, df)), fieller_one_sided_95_each = fie(qt(0.95, df)))))
}
# Gauss-Newton to rounding for a two-parameter curve; jac returns list(f, J)
gauss_newton <- function(b, fj, y) {
  for (i in 1:200) { z <- fj(b); st <- qr.solve(z$J, y - z$f); b <- b + st; if (max(abs(st / b)) < 1e-15) break }
  z <- fj(b); rss <- sum((y - z$f)^2); df <- length(y) - length(b)
  list(b = b, sd = sqrt(diag(solve(crossprod(z$J))) * rss / df), rss = rss, residual_sd = sqrt(rss / df), df = df)
}
# ---------------------------------------------------------------- log-logistic AFT
aft_block <- function(form, data, quant_at = NULL, weights = NULL, probs = c(0.5, 0.95)) {
  data$.w <- if (is.null(weights)) rep(1, nrow(data)) else weights
  m <- survival::survreg(form, data, weights = .w, dist = "loglogistic", control = survival::survreg.control(rel.tolerance = 1e-11, maxiter = 500))
  # independent check and polish: Newton on the log-likelihood written out here
  Y <- unclass(model.response(model.frame(form, data)))   # time1 (time2) status; 0 right, 1 exact, 2 left, 3 interval
  Y[, -ncol(Y)] <- suppressWarnings(log(Y[, -ncol(Y)]))
  X <- model.matrix(delete.response(terms(m)), data)
  k <- ncol(X)
  ll <- function(th) {
    mu <- drop(X %*% th[1:k]); sg <- exp(th[k + 1])
    st <- Y[, ncol(Y)]; z1 <- (Y[, 1] - mu) / sg
    z2 <- if (ncol(Y) == 3) (Y[, 2] - mu) / sg else z1
    v <- numeric(length(mu))
    e <- st == 1; v[e] <- dlogis(z1[e], log = TRUE) - log(sg) - Y[e, 1]
    r <- st == 0; v[r] <- plogis(z1[r], lower.tail = FALSE, log.p = TRUE)
    l <- st == 2; v[l] <- plogis(z1[l], log.p = TRUE)
    i <- st == 3; v[i] <- log(plogis(z2[i]) - plogis(z1[i]))
    sum(data$.w * v)
  }
  th <- c(coef(m), log(m$scale)); th2 <- th
  for (i in 1:6) { d <- solve(numDeriv::hessian(ll, th2), numDeriv::grad(ll, th2)); th2 <- th2 - d; if (max(abs(d)) < 1e-12) break }
  stopifnot(max(abs(th2 - th)) < 1e-5, abs(ll(th) - m$loglik[2]) < 1e-7 * (1 + abs(m$loglik[2])))
  V <- solve(-numDeriv::hessian(ll, th2))
  stopifnot(max(abs(sqrt(diag(V)) / sqrt(diag(m$var)) - 1)) < 1e-4)
  nms <- colnames(X); b <- th2[1:k]; sc <- exp(th2[k + 1])
  o <- list(distribution = "log-logistic: ln T = terms'coef + scale * E, E standard logistic; S(t) = 1/(1+exp((ln t - mu)/scale))",
    terms = nms, coef = unname(b), se = unname(sqrt(diag(V)))[1:k], scale = unname(sc), log_scale = unname(th2[k + 1]),
    se_log_scale = sqrt(V[k + 1, k + 1]), vcov_coef_logscale = unname(V), loglik = ll(th2), loglik_intercept_only = m$loglik[1],
    check_max_abs_score = max(abs(numDeriv::grad(ll, th2))), check_max_abs_diff_to_survreg = max(abs(th2 - th)))
  if (!is.null(quant_at)) o$quantiles <- lapply(names(quant_at), function(nm) {
    r <- quant_at[[nm]]
    list(at = nm, terms_vector = unname(r), q = lapply(probs, function(p) {
      lt <- sum(r * b) + sc * qlogis(p); gr <- c(r, sc * qlogis(p))
      se <- sqrt(drop(t(gr) %*% V %*% gr))
      list(fraction_by_t = p, ln_t = unname(lt), se_ln_t = se, t = unname(exp(lt)), wald_lower95_t = unname(exp(lt - qnorm(.975) * se)), wald_upper95_t = unname(exp(lt + qnorm(.975) * se)))
    }))
  })
  list(mod = m, out = o)
}
# ---------------------------------------------------------------- random-intercept logistic, Laplace
laplace_parts <- function(beta, sg, X, y, m, grp, b0 = NULL) {
  G <- nlevels(grp); gi <- as.integer(grp); eta0 <- drop(X %*% beta)
  b <- if (is.null(b0)) rep(0, G) else b0
  if (sg == 0) b <- rep(0, G) else for (k in 1:200) {
    p <- plogis(eta0 + b[gi]); w <- m * p * (1 - p)
    gr <- rowsum(y - m * p, gi)[, 1] - b / sg^2; H <- rowsum(w, gi)[, 1] + 1 / sg^2
    st <- gr / H; st <- pmax(pmin(st, 2), -2); b <- b + st
    if (max(abs(st)) < 1e-14) break
  }
  eta <- eta0 + b[gi]; p <- plogis(eta); w <- m * p * (1 - p); sw <- rowsum(w, gi)[, 1]
  ll <- sum(y * eta - m * log1pexp(eta)) + sum(lchoose(m, y))
  val <- ll - (if (sg > 0) 0.5 * sum(b^2) / sg^2 else 0) - 0.5 * sum(log1p(sg^2 * sw))
  list(value = val, b = b, w = w, sw = sw)
}
laplace_block <- function(form_fixed, data, y, m, grp, glmer_form = NULL, agq = FALSE) {
  X <- model.matrix(form_fixed, data); grp <- factor(grp); m <- rep(m, length.out = length(y))
  k <- ncol(X)
  nll <- function(th) -laplace_parts(th[1:k], exp(th[k + 1]), X, y, m, grp)$value
  st <- c(pmax_fit(X, y, m, pen = TRUE)$beta, log(0.7))
  o <- nlminb(st, nll, control = list(eval.max = 2000, iter.max = 1000, rel.tol = 1e-14))
  th <- o$par
  singular <- th[k + 1] < -5
  if (!singular) {
    for (i in 1:6) { d <- solve(numDeriv::hessian(nll, th), numDeriv::grad(nll, th)); th <- th - d; if (max(abs(d)) < 1e-11) break }
    sg <- exp(th[k + 1])
  } else { sg <- 0; th[1:k] <- pmax_fit(X, y, m, pen = FALSE)$beta }
  pr <- laplace_parts(th[1:k], sg, X, y, m, grp)
  gi <- as.integer(grp)
  XWX <- crossprod(X * sqrt(pr$w)); A <- rowsum(X * pr$w, gi)
  RX <- XWX - crossprod(A * sqrt(sg^2 / (1 + sg^2 * pr$sw)))
  se_rx <- sqrt(diag(solve(RX)))
  out <- list(terms = colnames(X), coef = unname(th[1:k]), random_intercept_sd = sg, random_intercept_var = sg^2, singular = singular,
    loglik_laplace_with_constants = pr$value, deviance_minus2loglik = -2 * pr$value, aic = -2 * pr$value + 2 * (k + 1),
    se_conditional_on_sd = unname(se_rx))
  if (!singular) {
    H <- numDeriv::hessian(nll, th); Vf <- solve(H)
    out$se_full_hessian <- unname(sqrt(diag(Vf)))[1:k]
    out$se_log_sd_full_hessian <- sqrt(Vf[k + 1, k + 1])
    out$check_max_abs_gradient <- max(abs(numDeriv::grad(nll, th)))
  }
  out$groups <- levels(grp); out$conditional_modes <- unname(pr$b); out$conditional_sd <- unname(sqrt(sg^2 / (1 + sg^2 * pr$sw)))
  if (!is.null(glmer_form)) {
    ctl <- lme4::glmerControl(optimizer = "bobyqa", optCtrl = list(maxfun = 1e6, rhoend = 1e-10), calc.derivs = TRUE, tolPwrss = 1e-13)
    gm <- suppressMessages(lme4::glmer(glmer_form, data, family = binomial, nAGQ = 1, control = ctl))
    sdg <- attr(lme4::VarCorr(gm)[[1]], "stddev")
    out$lme4 <- list(coef = unname(lme4::fixef(gm)), random_intercept_sd = unname(sdg), loglik = as.numeric(logLik(gm)),
      se_vcov_default = unname(sqrt(diag(as.matrix(vcov(gm))))), se_vcov_use_hessian_false = unname(sqrt(diag(as.matrix(suppressWarnings(vcov(gm, use.hessian = FALSE)))))))
    stopifnot(abs(out$lme4$loglik - pr$value) < 1e-5 * (1 + abs(pr$value)), max(abs(out$lme4$coef - out$coef)) < 2e-3)
    out$lme4_minus_own_max_abs_coef <- max(abs(out$lme4$coef - out$coef))
    out$lme4_minus_own_loglik <- out$lme4$loglik - pr$value
    if (agq) {
      g25 <- suppressMessages(lme4::glmer(glmer_form, data, family = binomial, nAGQ = 25, control = ctl))
      out$adaptive_gauss_hermite_25_for_comparison <- list(coef = unname(lme4::fixef(g25)), random_intercept_sd = unname(attr(lme4::VarCorr(g25)[[1]], "stddev")))
    }
  }
  out
}
# ---------------------------------------------------------------- exact binomial
clopper <- function(k, n, conf = 0.95) {
  a <- 1 - conf
  two <- c(if (k == 0) 0 else qbeta(a / 2, k, n - k + 1), if (k == n) 1 else qbeta(1 - a / 2, k + 1, n - k))
  one <- c(if (k == 0) 0 else qbeta(a, k, n - k + 1), if (k == n) 1 else qbeta(1 - a, k + 1, n - k))
  bt <- binom.test(k, n, conf.level = conf)$conf.int
  stopifnot(max(abs(bt - two)) < 1e-12)
  # check against the binomial tail itself
  if (k > 0) stopifnot(abs(pbinom(k - 1, n, two[1], lower.tail = FALSE) - a / 2) < 1e-10)
  if (k < n) stopifnot(abs(pbinom(k, n, two[2]) - a / 2) < 1e-10)
  list(k = k, n = n, confidence = conf, two_sided_lower = two[1], two_sided_upper = two[2], one_sided_lower = one[1], one_sided_upper = one[2])
}
# ---------------------------------------------------------------- CIEDE2000 (Sharma, Wu & Dalal 2005)
ciede2000 <- function(L1, a1, b1, L2, a2, b2) {
  rad <- pi / 180
  C1 <- sqrt(a1^2 + b1^2); C2 <- sqrt(a2^2 + b2^2); Cb <- (C1 + C2) / 2
  G <- 0.5 * (1 - sqrt(Cb^7 / (Cb^7 + 25^7)))
  A1 <- (1 + G) * a1; A2 <- (1 + G) * a2
  c1 <- sqrt(A1^2 + b1^2); c2 <- sqrt(A2^2 + b2^2)
  hue <- function(a, b) ifelse(a == 0 & b == 0, 0, (atan2(b, a) / rad) %% 360)
  h1 <- hue(A1, b1); h2 <- hue(A2, b2)
  dL <- L2 - L1; dC <- c2 - c1
  d <- h2 - h1
  dh <- ifelse(c1 * c2 == 0, 0, ifelse(abs(d) <= 180, d, ifelse(d > 180, d - 360, d + 360)))
  dH <- 2 * sqrt(c1 * c2) * sin(dh / 2 * rad)
  Lb <- (L1 + L2) / 2; cb <- (c1 + c2) / 2
  s <- h1 + h2
  hb <- ifelse(c1 * c2 == 0, s, ifelse(abs(h1 - h2) <= 180, s / 2, ifelse(s < 360, (s + 360) / 2, (s - 360) / 2)))
  T <- 1 - 0.17 * cos((hb - 30) * rad) + 0.24 * cos(2 * hb * rad) + 0.32 * cos((3 * hb + 6) * rad) - 0.20 * cos((4 * hb - 63) * rad)
  dt <- 30 * exp(-((hb - 275) / 25)^2); RC <- 2 * sqrt(cb^7 / (cb^7 + 25^7))
  SL <- 1 + 0.015 * (Lb - 50)^2 / sqrt(20 + (Lb - 50)^2); SC <- 1 + 0.045 * cb; SH <- 1 + 0.015 * cb * T
  RT <- -sin(2 * dt * rad) * RC
  sqrt((dL / SL)^2 + (dC / SC)^2 + (dH / SH)^2 + RT * (dC / SC) * (dH / SH))
}
# ---------------------------------------------------------------- output
pkg <- function(...) { p <- c(...); setNames(lapply(p, function(x) as.character(packageVersion(x))), p) }
term_list <- function(X) colnames(X)
dfcols <- function(d) lapply(as.list(d), function(v) if (is.factor(v)) as.character(v) else unname(v))
FOLDER <- c("a01-bliss-1935-beetles" = "bliss-1935",
  "a02-challenger-oring" = "dalal-1989",
  "a03-endometrial-separation" = "heinze-2002",
  "a04-urinary-infection-firth" = "foxman-1997",
  "a05-toy-separation" = "albert-1984",
  "a06-fieller-cars" = "ezekiel-1930",
  "a07-cbpp-random-intercept" = "lesnoff-2004",
  "a08-cosmesis-interval-aft" = "klein-1997",
  "a09-nist-norris-linear" = "nist-norris",
  "a11-clopper-pearson" = "clopper-1934",
  "a12-ciede2000" = "sharma-2005",
  "a13-hosmer-lemeshow-birthwt" = "hosmer-1989",
  "a14-synthetic-patches-48" = "synthetic-patches-48",
  "a15-synthetic-removal-threshold" = "synthetic-threshold",
  "a16-synthetic-patches-120" = "synthetic-patches-120")
emit <- function(id, title, checks, source, how, data, fits, extra = NULL, packages = pkg("jsonlite", "numDeriv"), file = id) {
  obj <- c(list(schema = "reference-case/1", id = id, title = title, source = source,
    how_computed = list(software = R.version.string, platform_note = "double precision; R from Debian 12 packages", packages = packages,
      script = sprintf("reference/r/make.R, block %s", id), method = how),
    data = data, fits = fits), extra)
  js <- toJSON(obj, auto_unbox = TRUE, digits = NA, null = "null", na = "null", pretty = TRUE)
  f <- file.path(OUT, FOLDER[[file]], "case.json")
  writeLines(js, f)
  sz <- file.size(f); if (sz > 300e3) stop(f, " is ", sz)
  cat(sprintf("%-34s %6.1f KB\n", FOLDER[[file]], sz / 1024))
}
vec1 <- function(x) I(x)
TOL <- list(
  coef = "relative 1e-6 (absolute 1e-7 near 0)", se = "relative 1e-5", loglik_deviance = "absolute 1e-6",
  profile_limits = "relative 1e-5 (absolute 1e-6 near 0)", ed = "relative 1e-5", p_values = "relative 1e-4",
  laplace = "relative 1e-4 on coefficients and SD, absolute 1e-4 on log-likelihood (lme4's own optimiser differs by about that)")
# ---------------------------------------------------------------- synthetic patches
# risk:    logit P(charred) = alpha[family] + u[board] + b1*log10_fluence + b2*log10_pulses
# removal: ln T(passes)     = mu[family] - g1*log10_fluence - g2*log10_pulses + s*E, E standard logistic
gen_patches <- function(seed, fam, boards, per_board, alpha, b1, b2, sd_board, mu, g1, g2, s,
                        lf = c(-0.6, 0.8), pulses = c(1, 2, 5, 10, 20, 50), sched = c(1, 2, 4, 8, 16, 32), force_charred = NULL) {
  set.seed(seed)
  fi <- rep(seq_along(fam), each = boards * per_board)
  bd <- rep(seq_len(length(fam) * boards), each = per_board)
  n <- length(fi)
  u <- rnorm(length(fam) * boards, 0, sd_board)
  x1 <- round(runif(n, lf[1], lf[2]), 4)
  x2 <- round(log10(sample(pulses, n, TRUE)), 4)
  pc <- plogis(alpha[fi] + u[bd] + b1 * x1 + b2 * x2)
  charred <- as.integer(runif(n) < pc)
  if (!is.null(force_charred)) charred <- as.integer(force_charred(x1, x2))
  T <- exp(mu[fi] - g1 * x1 - g2 * x2 + s * rlogis(n))
  last <- sample(seq_along(sched), n, TRUE)            # index of the last planned inspection
  every <- runif(n) < 0.6                              # inspected at every scheduled pass count, or only at the end
  lo <- hi <- rep(NA_integer_, n); made <- integer(n)
  for (i in 1:n) {
    ins <- if (every[i]) sched[1:last[i]] else sched[last[i]]
    k <- which(ins >= T[i])[1]
    if (is.na(k)) { lo[i] <- max(ins); made[i] <- max(ins) } else { hi[i] <- ins[k]; made[i] <- ins[k]; if (k > 1) lo[i] <- ins[k - 1] }
  }
  data.frame(family = fam[fi], board = paste0(fam[fi], "-", (bd - 1) %% boards + 1), log10_fluence = x1, log10_pulses = x2,
    passes = made, log10_passes = round(log10(made), 6), charred = charred, cleared = as.integer(!is.na(hi)),
    last_passes_uncleared = lo, first_passes_cleared = hi, stringsAsFactors = FALSE)
}
PATCH_NOTES <- list(family = "coating family", board = "board, nested in family", log10_fluence = "log10 of fluence in J/cm2",
  log10_pulses = "log10 of pulses per spot, 4 decimals", passes = "passes made when the patch was left", log10_passes = "log10(passes), 6 decimals",
  charred = "1 if charred", cleared = "1 if the coating was off when the patch was left",
  last_passes_uncleared = "largest inspected pass count at which it was not yet clear; null: none (left censored)",
  first_passes_cleared = "smallest inspected pass count at which it was clear; null: never (right censored)")
separated <- function(X, y) {   # complete or quasi-complete: ML runs off
  f <- suppressWarnings(glm.fit(X, y, family = binomial(), control = list(epsilon = 1e-14, maxit = 60)))
  max(abs(f$linear.predictors)) > 18
}
patch_fits <- function(d, ref_pulses = 1, per_family = TRUE, pooled = TRUE, aft = TRUE, mixed = TRUE, mixed_family = FALSE, loo = nrow(d) <= 60, agq = FALSE) {
  F <- list(); fams <- sort(unique(d$family))
  d$family <- factor(d$family, levels = fams)
  if (per_family) for (f in fams) {
    s <- d[d$family == f, ]; X <- cbind("(Intercept)" = 1, log10_fluence = s$log10_fluence)
    r <- firth_block(X, s$charred)
    F[[length(F) + 1]] <- list(id = paste0("firth_family_", f), model = sprintf("Firth logistic regression of charred on intercept + log10_fluence, rows of family %s only", f),
      response = "charred", subset = list(family = f), n = nrow(s), events = sum(s$charred), terms = colnames(X), ml_separated = separated(X, s$charred),
      expected = r$out, ed05 = c(list(definition = "log10_fluence at which risk is 0.05"), ed_block(r$fit, X, s$charred, 1, 2, c(1, 0))))
  }
  multi <- length(fams) > 1
  X <- if (multi) model.matrix(~ family + log10_fluence + log10_pulses, d) else model.matrix(~ log10_fluence + log10_pulses, d)
  attr(X, "assign") <- attr(X, "contrasts") <- NULL; rownames(X) <- NULL
  y <- d$charred
  if (pooled) {
    r <- firth_block(X, y); jx <- which(colnames(X) == "log10_fluence"); j2 <- which(colnames(X) == "log10_pulses")
    eds <- lapply(fams, function(f) {
      ref <- rep(0, ncol(X)); ref[1] <- 1; ref[j2] <- ref_pulses
      if (multi && f != fams[1]) ref[which(colnames(X) == paste0("family", f))] <- 1
      c(list(definition = sprintf("log10_fluence at which risk is 0.05 for family %s at log10_pulses = %g", f, ref_pulses), family = f), ed_block(r$fit, X, y, 1, jx, ref, check = nrow(d) <= 500))
    })
    p <- plogis(drop(X %*% r$fit$beta))
    F[[length(F) + 1]] <- list(id = "firth_pooled_slopes", model = paste("Firth logistic regression of charred on", if (multi) "family (0/1 contrasts against the first family in alphabetical order) + log10_fluence + log10_pulses" else "log10_fluence + log10_pulses"),
      response = "charred", n = nrow(d), events = sum(y), terms = colnames(X), ml_separated = separated(X, y), expected = r$out, ed05 = eds,
      goodness_of_fit_of_firth_risks = gof_binary(y, p, 10, hl = nrow(d) >= 40), leave_one_out = if (loo) loo_binary(X, y) else NULL)
    if (!separated(X, y)) {
      q <- firth_block(X, y, pen = FALSE, profile = nrow(d) <= 500)
      pm <- plogis(drop(X %*% q$fit$beta))
      F[[length(F) + 1]] <- list(id = "ml_pooled_slopes", model = "same as firth_pooled_slopes, ordinary maximum likelihood", response = "charred", n = nrow(d), terms = colnames(X), expected = q$out,
        deviance = -2 * q$out$loglik_kernel, df_residual = nrow(X) - ncol(X), goodness_of_fit = gof_binary(y, pm, 10, hl = nrow(d) >= 40))
    }
  }
  if (aft) {
    l <- d$last_passes_uncleared; u <- d$first_passes_cleared
    dd <- d; dd$.l <- l; dd$.u <- u
    fm <- if (multi) survival::Surv(.l, .u, type = "interval2") ~ family + log10_fluence + log10_pulses else survival::Surv(.l, .u, type = "interval2") ~ log10_fluence + log10_pulses
    k <- ncol(X); at <- list(c(1, rep(0, k - 1))); names(at) <- sprintf("family %s, log10_fluence = 0, log10_pulses = 0", fams[1])
    a <- aft_block(fm, dd, at)
    F[[length(F) + 1]] <- list(id = "aft_passes_to_clear", model = paste("log-logistic accelerated failure time model for passes to clear;", "time in passes, natural logarithm inside; interval (last_passes_uncleared, first_passes_cleared], null left = left censored, null right = right censored"),
      response = list(left = "last_passes_uncleared", right = "first_passes_cleared"), n = nrow(d),
      censoring = list(left = sum(is.na(l)), right = sum(is.na(u)), interval = sum(!is.na(l) & !is.na(u))), expected = a$out)
  }
  if (mixed) {
    fx <- if (multi) ~ family + log10_fluence + log10_pulses else ~ log10_fluence + log10_pulses
    F[[length(F) + 1]] <- list(id = "mixed_board", model = paste("random-intercept logistic regression of charred; fixed:", if (multi) "family + log10_fluence + log10_pulses;" else "log10_fluence + log10_pulses;", "random intercept per board, normal; maximum likelihood, Laplace approximation (one quadrature point)"),
      response = "charred", group = "board", expected = laplace_block(fx, d, y, 1, d$board, if (multi) charred ~ family + log10_fluence + log10_pulses + (1 | board) else charred ~ log10_fluence + log10_pulses + (1 | board), agq = agq))
  }
  if (mixed_family) F[[length(F) + 1]] <- list(id = "mixed_family", model = "random-intercept logistic regression of charred; fixed: log10_fluence + log10_pulses; random intercept per family; maximum likelihood, Laplace approximation", response = "charred", group = "family",
      expected = laplace_block(~ log10_fluence + log10_pulses, d, y, 1, d$family, charred ~ log10_fluence + log10_pulses + (1 | family)))
  F
}
