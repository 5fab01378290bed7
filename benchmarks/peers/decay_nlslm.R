# Times R's nlsLM (package minpack.lm) on the benchmark series: scaled, start from the data, bounds.
#   dotnet run -c Release --project benchmarks/OilCondition.Benchmarks -- series > series.csv
#   Rscript benchmarks/peers/decay_nlslm.R series.csv
library(minpack.lm)
all <- read.csv(commandArgs(trailingOnly = TRUE)[1])
cat(R.version.string, "minpack.lm", as.character(packageVersion("minpack.lm")), "\n")
for (n in c(12, 50, 200)) {
  data <- split(all[all$count == n, ], all$series[all$count == n])
  data <- lapply(data, function(d) data.frame(t = d$time / max(d$time), y = d$value / max(d$value)))
  failed <- 0
  rounds <- replicate(3, {
    failed <<- 0
    spent <- system.time(for (d in data) {
      last <- d$y[nrow(d)]
      start <- list(floor = max(last, 0.01), amplitude = d$y[1] - last, k = 1)
      ok <- tryCatch({
        nlsLM(y ~ floor + amplitude * exp(-k * t), data = d, start = start, lower = c(0, -Inf, 0))
        TRUE
      }, error = function(e) FALSE)
      if (!ok) failed <<- failed + 1
    })
    spent[["elapsed"]] / length(data) * 1e6
  })
  cat(sprintf("n=%d nlsLM: %.0f us a fit, %d of %d failed\n", n, median(rounds), failed, length(data)))
}
