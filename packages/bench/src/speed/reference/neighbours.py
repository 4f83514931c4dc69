"""Square roots at each of the points from the 16 nearest others, by scikit-learn. Words: POINTS.csv NUMBER.

POINTS.csv has x,y,root, no root where a gauge was silent. Once for all points by distance weights out of one search, once for NUMBER of them by a Gaussian process with the
covariance given, fitted to the 16 neighbours of each. Prints a word, the seconds by the clock, the seconds of processor.
"""
import sys
import time
import numpy as np
from sklearn.gaussian_process import GaussianProcessRegressor
from sklearn.gaussian_process.kernels import ConstantKernel, Matern
from sklearn.neighbors import KNeighborsRegressor


def tell(word, clock, processor):
    print(word, round(time.perf_counter() - clock, 4), round(time.process_time() - processor, 4))


points = np.genfromtxt(sys.argv[1], delimiter=",", skip_header=1)
points = points[~np.isnan(points[:, 2])]
place, root = points[:, :2], points[:, 2]

begun = time.perf_counter(), time.process_time()
model = KNeighborsRegressor(n_neighbors=16, weights="distance").fit(place, root)
distance, index = model.kneighbors()  # of the points themselves, each left out of its own neighbours
weight = 1 / np.maximum(distance, 1)
estimate = (weight * root[index]).sum(axis=1) / weight.sum(axis=1)
tell("weights", *begun)

kernel = ConstantKernel(2.0, "fixed") * Matern(length_scale=60_000.0, length_scale_bounds="fixed", nu=0.5)
begun = time.perf_counter(), time.process_time()
for one in np.linspace(0, len(points) - 1, int(sys.argv[2])).round().astype(int):
    near = index[one]
    process = GaussianProcessRegressor(kernel, alpha=0.3, optimizer=None)
    process.fit(place[near], root[near] - root[near].mean())
    process.predict(place[one : one + 1], return_std=True)
tell("process", *begun)
