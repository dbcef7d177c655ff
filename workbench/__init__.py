"""Trailbench: set up a bike's suspension and find out, with evidence, which change helped."""

import os

# Before numpy is loaded by anybody. The matrices here are small: on several threads they are multiplied no faster, and
# where the processors are busy many times slower, as the threads wait for one another at every product.
for _name in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS", "VECLIB_MAXIMUM_THREADS"):
    os.environ.setdefault(_name, "1")
