# Exports two open data sets, one division of each into ten folds, and what a reference library forecasts for every
# case from the other nine folds. Run once, beside the files it writes:   Rscript exportReference.R
# Debian packages: r-base-core, r-cran-mlbench (the data), r-cran-e1071 (the reference: naiveBayes, laplace = 1).
library(mlbench)
library(e1071)

RNGkind("Mersenne-Twister", "Inversion", "Rejection")

# Deals the cases of each cause out to the folds in turn, after one shuffle: every fold meets every cause.
dealFolds <- function(class, folds) {
  fold <- integer(length(class))
  for (level in levels(class)) {
    members <- which(class == level)
    members <- members[sample.int(length(members))]
    fold[members] <- (seq_along(members) - 1) %% folds + 1
  }
  fold
}

export <- function(data, name, seed, folds = 10) {
  set.seed(seed)
  fold <- dealFolds(data$Class, folds)
  forecast <- matrix(NA_real_, nrow(data), nlevels(data$Class), dimnames = list(NULL, levels(data$Class)))
  for (f in seq_len(folds)) {
    model <- naiveBayes(Class ~ ., data = data[fold != f, ], laplace = 1)
    forecast[fold == f, ] <- predict(model, data[fold == f, ], type = "raw")
  }
  findings <- data[, names(data) != "Class"]
  cases <- data.frame(case = seq_len(nrow(data)), fold = fold, cause = data$Class,
                      lapply(findings, as.character), check.names = FALSE)
  write.csv(cases, paste0(name, ".csv"), row.names = FALSE, quote = FALSE, na = "")
  written <- apply(forecast, 2, function(column) sprintf("%.12g", column))
  write.csv(cbind(case = seq_len(nrow(data)), written), paste0(name, "-reference.csv"),
            row.names = FALSE, quote = FALSE)
  levels <- data.frame(finding = names(findings),
                       values = sapply(findings, function(f) paste(levels(f), collapse = " ")))
  write.csv(levels, paste0(name, "-findings.csv"), row.names = FALSE, quote = FALSE)

  chance <- forecast[cbind(seq_len(nrow(data)), as.integer(data$Class))]
  data.frame(data = name, cases = nrow(data), incomplete = sum(!complete.cases(findings)),
             accuracy = sprintf("%.12g", mean(apply(forecast, 1, which.max) == as.integer(data$Class))),
             logLoss = sprintf("%.12g", mean(-log(pmax(chance, .Machine$double.eps)))))
}

data(Soybean)
data(HouseVotes84)
summary <- rbind(export(Soybean, "soybean", 20031), export(HouseVotes84, "house-votes", 20032))
write.csv(summary, "reference-summary.csv", row.names = FALSE, quote = FALSE)
