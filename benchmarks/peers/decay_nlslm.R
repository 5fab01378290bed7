# Times R's nlsLM (package minpack.lm) on the benchmark series: scaled, start from the data, analytic gradient, bounds.
#   dotnet run -c Release --project benchmarks/OilCondition.Benchmarks -- series > series.csv
#   Rscript benchmarks/peers/decay_nlslm.R series.csv
# 'failed' counts fits that gave up or ended more than 0.1 % above the least sum of squares of a dense grid of k.
library(minpack.lm)
all <- read.csv(commandArgs(trailingOnly = TRUE)[1])
cat(R.version.string, "minpack.lm", as.character(packageVersion("minpack.lm")), "\n")
curve <- deriv(~ floor + amplitude * exp(-k * t), c("floor", "amplitude", "k"), function(floor, amplitude, k, t) NULL)
grid <- function(t, y) {
  least <- Inf
  for (k in exp(seq(log(1 / 64), log(12 / t[2]), length.out = 1000))) {
    e <- exp(-k * t)
    amplitude <- sum((e - mean(e)) * y) / sum((e - mean(e))^2)
    floor <- mean(y) - amplitude * mean(e)
    if (floor < 0) {
      floor <- 0
      amplitude <- sum(e * y) / sum(e^2)
    }
    least <- min(least, sum((y - floor - amplitude * e)^2))
  }
  least
}
for (kind in c("ordinary", "mixed")) for (n in c(12, 50, 200)) {
  chosen <- all[all$count == n & all$kind == kind, ]
  data <- lapply(split(chosen, chosen$series), function(d) data.frame(t = d$time / max(d$time), y = d$value / max(d$value)))
  least <- sapply(data, function(d) grid(d$t, d$y))
  failed <- 0
  rounds <- replicate(3, {
    fits <- vector("list", length(data))
    spent <- system.time(for (i in seq_along(data)) {
      d <- data[[i]]
      last <- d$y[nrow(d)]
      start <- list(floor = max(last, 0.01), amplitude = d$y[1] - last, k = 1)
      fits[[i]] <- tryCatch(
        nlsLM(y ~ curve(floor, amplitude, k, t), data = d, start = start, lower = c(0, -Inf, 0)),
        error = function(e) NA
      )
    })
    failed <<- sum(mapply(function(f, l) !inherits(f, "nls") || deviance(f) > 1.001 * l + 1e-12, fits, least))
    spent[["elapsed"]] / length(data) * 1e6
  })
  cat(sprintf("%s n=%d nlsLM, bounds: %.0f us a fit, %d of %d failed\n", kind, n, median(rounds), failed, length(data)))
}
