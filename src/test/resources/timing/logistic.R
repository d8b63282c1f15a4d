# Time of R's own logistic regression. Arguments: rows.csv (x1, x2, y with a heading).
d <- as.matrix(read.csv(commandArgs(TRUE)[1]))
X <- cbind(1, d[, 1:2]); y <- d[, 3]
for (i in 1:3) t <- system.time(f <- glm.fit(X, y, family = binomial()))["elapsed"]
cat(t, coef(f), "\n")
