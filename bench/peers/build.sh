#!/bin/sh
# Debian 12: apt-get install libfcl-dev g++ (FCL 0.7, BSD licence). Builds the peer beside this file.
set -eu
cd "$(dirname "$0")"
g++ -std=c++17 -O3 -march=native -DNDEBUG -I/usr/include/eigen3 fcl_distance.cpp -o fcl_distance -lfcl -lccd
