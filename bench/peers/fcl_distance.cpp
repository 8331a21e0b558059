// Distance between two triangle meshes by FCL (BSD licence), for comparison with ours: RSS trees, one thread.
// fcl_distance SCAN WHEEL POSES: meshes as int32 points, int32 triangles, float xyz, int32 corners; poses as 12 doubles each
// (rotation by rows, then translation) of the wheel's mesh. Prints build times (ms), then one line a pose: distance (m), time (us).
#include <fcl/fcl.h>
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <fstream>
#include <memory>
#include <vector>

using Model = fcl::BVHModel<fcl::RSSd>;
using Clock = std::chrono::steady_clock;

static double us(Clock::time_point from) { return std::chrono::duration<double, std::micro>(Clock::now() - from).count(); }

static std::shared_ptr<Model> load(const char* path, const char* name) {
  std::ifstream in(path, std::ios::binary);
  int32_t n = 0, m = 0;
  in.read(reinterpret_cast<char*>(&n), 4);
  in.read(reinterpret_cast<char*>(&m), 4);
  std::vector<float> xyz(3 * static_cast<size_t>(n));
  std::vector<int32_t> corners(3 * static_cast<size_t>(m));
  in.read(reinterpret_cast<char*>(xyz.data()), static_cast<std::streamsize>(xyz.size() * 4));
  in.read(reinterpret_cast<char*>(corners.data()), static_cast<std::streamsize>(corners.size() * 4));
  if (!in || n <= 0 || m <= 0) { std::fprintf(stderr, "cannot read %s\n", path); std::exit(2); }
  std::vector<fcl::Vector3d> points;
  std::vector<fcl::Triangle> triangles;
  for (int32_t i = 0; i < n; i++) points.emplace_back(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
  for (int32_t i = 0; i < m; i++) triangles.emplace_back(corners[3 * i], corners[3 * i + 1], corners[3 * i + 2]);
  auto start = Clock::now();
  auto model = std::make_shared<Model>();
  model->beginModel();
  model->addSubModel(points, triangles);
  model->endModel();
  std::printf("build %s %.1f ms %d triangles\n", name, us(start) / 1000, m);
  return model;
}

int main(int argc, char** argv) {
  if (argc != 4) { std::fprintf(stderr, "fcl_distance SCAN WHEEL POSES\n"); return 2; }
  auto scan = load(argv[1], "scan"), wheel = load(argv[2], "wheel");
  std::ifstream poses(argv[3], std::ios::binary);
  double p[12];
  while (poses.read(reinterpret_cast<char*>(p), sizeof p)) {
    fcl::Transform3d at = fcl::Transform3d::Identity();
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) at.linear()(i, j) = p[3 * i + j];
      at.translation()(i) = p[9 + i];
    }
    fcl::DistanceRequestd request;
    request.rel_err = request.abs_err = 0;
    fcl::DistanceResultd result;
    auto start = Clock::now();
    fcl::distance(scan.get(), fcl::Transform3d::Identity(), wheel.get(), at, request, result);
    std::printf("%.9f %.2f\n", result.min_distance, us(start));
  }
}
