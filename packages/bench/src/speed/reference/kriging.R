# Ordinary kriging of square roots from 16 neighbours by gstat. Words: POINTS.csv (x,y,root; no root where silent), then
#   OUT.csv   at every point moved by 500 m both ways, silent ones too: the estimates go to OUT.csv
#   NUMBER    leaving out that many of the points with a root one by one, or all of them (krige.cv)
# Prints a word, the seconds by the clock and the seconds of processor; reading and writing files is left out.
suppressMessages(library(gstat))
suppressMessages(library(sp))
words <- commandArgs(trailingOnly = TRUE)
points <- read.csv(words[1])
places <- data.frame(x = points$x + 500, y = points$y + 500)
points <- points[!is.na(points$root), ]
coordinates(points) <- ~ x + y
coordinates(places) <- ~ x + y
model <- vgm(psill = 2, model = "Exp", range = 60000, nugget = 0.3)
tell <- function(word, started) {
  took <- proc.time() - started
  cat(word, took[["elapsed"]], took[["user.self"]] + took[["sys.self"]], "\n")
}
count <- suppressWarnings(as.integer(words[2]))
started <- proc.time()
if (is.na(count)) {
  answer <- krige(root ~ 1, points, places, model, nmax = 16, debug.level = 0)
  tell("plain", started)
  write.csv(data.frame(root = answer$var1.pred, variance = answer$var1.var), words[2], row.names = FALSE)
} else if (count < nrow(points)) {
  # What krige.cv does for each point, for some of them.
  kriging <- gstat(NULL, "root", root ~ 1, points, model = model, nmax = 16)
  for (one in round(seq(1, nrow(points), length.out = count))) {
    kriging$data[[1]]$data <- points[-one, ]
    predict(kriging, newdata = points[one, ], debug.level = 0)
  }
  tell("left", started)
} else {
  krige.cv(root ~ 1, points, model, nmax = 16, verbose = FALSE, debug.level = 0)
  tell("left", started)
}
