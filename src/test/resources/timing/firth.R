# Firth's logistic regression with profile limits of every coefficient, by Newton steps in matrix algebra
# as a careful user would write it (Heinze and Schemper 2002). Arguments: rows.csv (x1, x2, y with a heading).
d <- as.matrix(read.csv(commandArgs(TRUE)[1]))
X <- cbind(1, d[, 1:2]); y <- d[, 3]
fit <- function(X, y, offset = 0, b = rep(0, ncol(X)), full = X) {
  value <- function(b) {
    p <- plogis(drop(X %*% b) + offset)
    list(p = p, l = sum(log(ifelse(y == 1, p, 1 - p))) + determinant(crossprod(full, full * (p * (1 - p))))$modulus / 2)
  }
  v <- value(b)
  for (i in 1:100) {
    w <- v$p * (1 - v$p)
    h <- rowSums((full %*% solve(crossprod(full, full * w))) * full) * w
    score <- crossprod(X, y - v$p + h * (0.5 - v$p))
    step <- drop(solve(crossprod(X, X * w), score))
    repeat { n <- value(b + step); if (n$l >= v$l - 1e-12 || max(abs(step)) < 1e-12) break; step <- step / 2 }
    b <- b + step; v <- n
    if (max(abs(step)) < 1e-9) break
  }
  list(b = b, l = v$l)
}
t <- system.time({
  f <- fit(X, y)
  limits <- sapply(seq_len(ncol(X)), function(j) {
    drop_to <- function(v) 2 * (f$l - fit(X[, -j, drop = FALSE], y, X[, j] * v, f$b[-j], X)$l) - qchisq(0.95, 1)
    c(uniroot(drop_to, f$b[j] - c(2, 0), extendInt = "downX", tol = 1e-7)$root,
      uniroot(drop_to, f$b[j] + c(0, 2), extendInt = "upX", tol = 1e-7)$root)
  })
})["elapsed"]
cat(t, f$b, limits, "\n")
