# What R takes from its start to the nearest ready-made fit of both events (glmer), with nothing computed from it.
# Argument: patches.csv (event, lnd, lnf, board, without, with; with = 0: never).
suppressMessages(library(lme4))
all <- read.csv(commandArgs(TRUE)[1])
for (event in c("char", "clearing")) {
  d <- all[all$event == event, ]
  readings <- rbind( # the last reading without the event, the first with it
    data.frame(y = 0, lnd = d$lnd, n = d$without, board = d$board)[d$without > 0, ],
    data.frame(y = 1, lnd = d$lnd, n = d$with, board = d$board)[d$with > 0, ])
  fit <- suppressWarnings(suppressMessages(glmer(y ~ lnd + log(n) + (1 | board), readings, binomial, nAGQ = 15)))
  cat(event, fixef(fit), "\n")
}
