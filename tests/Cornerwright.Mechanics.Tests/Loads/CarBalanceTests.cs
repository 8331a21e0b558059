using Cornerwright.Mechanics.Loads;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;

namespace Cornerwright.Mechanics.Tests.Loads;

/// <summary>The car on four corners, against closed forms and against a dense system put together another way.</summary>
public sealed class CarBalanceTests
{
    private const int Seed = 20_260_911;

    // Rigid body on four ride rates, 30 N/mm front, 25 N/mm rear, left front perch up by 10 mm at the wheel.
    // Source: self-equilibrating warp load, each corner h kf kr/(2 (kf + kr)) = 68.182 N, left front body corner +7.727 mm;
    // principle in Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 18. Derived from the formula named.
    // Second row: tracks of 1520 and 1480 mm, pattern (1/tf, -1/tf, -1/tr, 1/tr): ±66.203 N and ∓67.993 N.
    [Theory]
    [InlineData(1.5, 1.5, 68.182, 68.182, 0.0005)]
    [InlineData(1.52, 1.48, 66.203, 67.993, 0.0005)]
    public void A_raised_perch_loads_one_diagonal(double trackFront, double trackRear, double front, double rear, double tolerance)
    {
        // Ride rates are given: the tyres are taken as stiff as steel.
        var (car, corners) = Plain(trackFront, trackRear, 30e3, 25e3, 1e12, default, default);
        var before = CarBalance.Solve(car, corners, [0, 0, 0, 0]);
        var after = CarBalance.Solve(car, corners, [0.010, 0, 0, 0]);
        Assert.Equal(BalanceStop.Converged, after.Why);
        double[] change = [.. Enumerable.Range(0, 4).Select(i => after.Load[i] - before.Load[i])];
        Assert.Equal(front, change[0], tolerance);
        Assert.Equal(-front, change[1], tolerance);
        Assert.Equal(-rear, change[2], tolerance);
        Assert.Equal(rear, change[3], tolerance);
        Assert.Equal(0, change.Sum(), 1e-6);
        if (trackFront == trackRear)
        {
            Assert.Equal(7.727e-3, after.BodyRise(0), 0.0005e-3);
        }
    }

    // The same numbers from the table in Warp: signs (+ - - +), sizes as 1/track.
    [Fact]
    public void The_warp_pattern_has_opposite_signs_across_and_along()
    {
        var (car, _) = Plain(1.52, 1.48, 30e3, 25e3, 2e5, default, default);
        double[] pattern = Warp.LoadPattern(car.Wheels);
        Assert.True(pattern[0] > 0 && pattern[1] < 0 && pattern[2] < 0 && pattern[3] > 0);
        Assert.Equal(1.48 / 1.52, pattern[0] / pattern[3], 1e-12);
        Assert.Equal(0, pattern.Sum(), 1e-12);
        Assert.Equal(4, pattern.Sum(Math.Abs), 1e-12);
    }

    [Fact]
    public void Cross_weight_ends_where_a_wheel_leaves_the_ground()
    {
        double[] loads = [3000, 3200, 2500, 2300], pattern = [1, -1, -1, 1];
        var (least, greatest) = Warp.CrossWeightRange(loads, pattern);
        Assert.Equal((5700.0 - 5000) / 11000, least, 1e-12);      // up by 2500: the rear left lifts
        Assert.Equal((5700.0 + 4600) / 11000, greatest, 1e-12);   // down by 2300: the rear right lifts
    }

    // Common practice, no source: a driver on the left takes the left corners down; by statics of a rigid body on equal springs,
    // m g/4 (1 ± y/(t/2)) a side at mid wheelbase, and the cross weight stays.
    [Fact]
    public void A_driver_amidships_loads_his_side_and_leaves_the_cross_weight()
    {
        var (car, corners) = Plain(1.5, 1.5, 28e3, 28e3, 2e5, default, default);
        var before = CarBalance.Solve(car, corners, [0, 0, 0, 0]);
        var aboard = car with { Weights = [.. car.Weights, new WeightOnBody(80 * 9.80665, 0, 0.35)] };
        var after = CarBalance.Solve(aboard, corners, [0, 0, 0, 0]);
        double quarter = 80 * 9.80665 / 4, lean = quarter * 0.35 / 0.75;
        for (int i = 0; i < 4; i++)
        {
            Assert.Equal(quarter + (i % 2 == 0 ? lean : -lean), after.Load[i] - before.Load[i], 1e-6);
        }

        Assert.Equal(before.CrossWeight, after.CrossWeight, 1e-9);
        Assert.True(after.Roll < 0, "the left side goes down");
    }

    // A bar does not mind heave and resists roll: K = k MR² t²/2 with k twice the one-end rate.
    // Source: AntiRollBar.RollStiffness; Gillespie (1992), eq. 6-15.
    [Fact]
    public void A_bar_adds_its_roll_stiffness()
    {
        var bar = new BarUnderCar(20e3, 0.8, 0.8, 0);
        var (car, corners) = Plain(1.5, 1.5, 30e3, 25e3, 1e12, bar, default);
        var couple = car with { Weights = [.. car.Weights, new WeightOnBody(100, 0, 5), new WeightOnBody(-100, 0, -5)] };
        double stiffness = ((30e3 + 25e3) * 1.5 * 1.5 / 2) + Mechanics.Bars.AntiRollBar.RollStiffness(2 * 20e3, 0.8, 1.5);
        var stance = CarBalance.Solve(couple, corners, [0, 0, 0, 0]);
        Assert.Equal(-1000 / stiffness, stance.Roll, 1e-9);
        Assert.Equal(0, stance.Heave, 1e-9);
    }

    // Straight cars: stiffness matrix put together from each spring's direction in the seven coordinates, solved by MathNet.
    [Fact]
    public void A_thousand_straight_cars_stand_as_a_dense_system_says()
    {
        var random = new Random(Seed);
        double worst = 0;
        for (int n = 0; n < 1000; n++)
        {
            var drawn = InventedCar.Draw(random, 0);
            var stance = drawn.Solve();
            Assert.True(stance.Why == BalanceStop.Converged, $"seed {Seed}, car {n}: {stance.Why}");
            var dense = Dense(drawn);
            for (int i = 0; i < 4; i++)
            {
                worst = Math.Max(worst, Math.Abs(stance.HubRise[i] - dense[3 + i]));
                worst = Math.Max(
                    worst,
                    Math.Abs(stance.BodyRise(i) - (dense[0] + (drawn.Car.Wheels[i].Y * dense[1]) - (drawn.Car.Wheels[i].X * dense[2]))));
            }
        }

        Assert.True(worst < 1e-9, $"seed {Seed}: {worst} m");
    }

    // Hardening cars: the stance is where the stored energy is least, by differences of the energy alone.
    [Fact]
    public void Hardening_cars_stand_where_their_energy_is_least()
    {
        var random = new Random(Seed + 1);
        for (int n = 0; n < 300; n++)
        {
            var drawn = InventedCar.Draw(random, 4e6);
            var stance = drawn.Solve();
            Assert.True(stance.Why == BalanceStop.Converged, $"seed {Seed + 1}, car {n}: {stance.Why}");
            double[] v = [stance.Heave, stance.Roll, stance.Pitch, .. stance.HubRise];
            for (int k = 0; k < 7; k++)
            {
                const double h = 1e-5;
                double[] up = [.. v], down = [.. v];
                up[k] += h;
                down[k] -= h;
                double slope = (Energy(drawn, up) - Energy(drawn, down)) / (2 * h);
                Assert.True(Math.Abs(slope) < 0.01, $"seed {Seed + 1}, car {n}, coordinate {k}: {slope} N");
            }
        }
    }

    [Fact]
    public void Sensitivities_are_the_differences()
    {
        var random = new Random(Seed + 2);
        for (int n = 0; n < 100; n++)
        {
            var drawn = InventedCar.Draw(random, 4e6);
            var s = CarBalance.Sensitivity(drawn.Car, drawn.Corners, drawn.Seats, drawn.Solve());
            Assert.NotNull(s);
            for (int j = 0; j < 4; j++)
            {
                const double h = 1e-5;
                double[] up = [.. drawn.Seats], down = [.. drawn.Seats];
                up[j] += h;
                down[j] -= h;
                CarStance a = CarBalance.Solve(drawn.Car, drawn.Corners, up), b = CarBalance.Solve(drawn.Car, drawn.Corners, down);
                for (int i = 0; i < 4; i++)
                {
                    Assert.Equal((a.Travel[i] - b.Travel[i]) / (2 * h), s!.Travel[i, j], 2e-5);
                    Assert.Equal((a.Load[i] - b.Load[i]) / (2 * h), s.Load[i, j], 2.0);   // N per m
                }
            }
        }
    }

    // Without bars, and with a load over the right rear, the left front corner, its seat 0.3 m lower, hangs: its tyre bears nothing, and no
    // seat changes that.
    [Fact]
    public void A_wheel_in_the_air_bears_nothing_whatever_the_seats_do()
    {
        var (car, corners) = Plain(1.5, 1.5, 60e3, 50e3, 2e5, default, default);
        car = car with { Weights = [.. car.Weights, new WeightOnBody(3000, -1.0, -0.5)] };
        double[] seats = [-0.3, 0, 0, 0];
        CarStance stance = CarBalance.Solve(car, corners, seats);
        Assert.Equal(BalanceStop.Converged, stance.Why);
        Assert.Equal(0, stance.Load[0]);
        Assert.True(stance.Load[1] > 0 && stance.Load[2] > 0 && stance.Load[3] > 0);
        SeatSensitivity s = CarBalance.Sensitivity(car, corners, seats, stance)!;
        for (int j = 0; j < 4; j++)
        {
            const double h = 1e-5;
            double[] up = [.. seats], down = [.. seats];
            up[j] += h;
            down[j] -= h;
            CarStance a = CarBalance.Solve(car, corners, up), b = CarBalance.Solve(car, corners, down);
            Assert.Equal(0, s.Load[0, j]);
            for (int i = 0; i < 4; i++)
            {
                Assert.Equal((a.Load[i] - b.Load[i]) / (2 * h), s.Load[i, j], 2.0);   // N per m
            }
        }
    }

    [Fact]
    public void A_wheel_with_nothing_above_it_is_reported()
    {
        var (car, corners) = Plain(1.5, 1.5, 30e3, 25e3, 2e5, default, default);
        corners[0] = new InventedCorner(0, 0, 0, 1);
        corners[3] = new InventedCorner(0, 0, 0, 1);
        Assert.NotEqual(BalanceStop.Converged, CarBalance.Solve(car, corners, [0, 0, 0, 0]).Why);
    }

    private static (CarOnWheels Car, InventedCorner[] Corners) Plain(
        double trackFront, double trackRear, double front, double rear, double tyre, BarUnderCar frontBar, BarUnderCar rearBar)
    {
        InventedCorner[] corners = [new(3000, front, 0, 1), new(3000, front, 0, 1), new(3000, rear, 0, 1), new(3000, rear, 0, 1)];
        WheelUnderCar[] wheels =
        [
            new(1.3, trackFront / 2, 400, tyre, 3400), new(1.3, -trackFront / 2, 400, tyre, 3400),
            new(-1.3, trackRear / 2, 400, tyre, 3400), new(-1.3, -trackRear / 2, 400, tyre, 3400),
        ];
        return (new CarOnWheels(wheels, frontBar, rearBar, [CarOnWheels.Resultant(wheels, [3000, 3000, 3000, 3000])]), corners);
    }

    private static Vector<double> Direction(CarOnWheels car, int wheel, double share) =>
        DenseVector.OfEnumerable(
            Enumerable.Range(0, 7).Select(
                k => share * (k switch { 0 => -1, 1 => -car.Wheels[wheel].Y, 2 => car.Wheels[wheel].X, _ => k - 3 == wheel ? 1 : 0 })));

    private static Vector<double> Dense(InventedCar drawn)
    {
        var (car, corners, seats) = drawn;
        Matrix<double> stiffness = DenseMatrix.Create(7, 7, 0);
        Vector<double> load = DenseVector.Create(7, 0);
        foreach (var w in car.Weights)
        {
            load -= w.Newtons * DenseVector.OfArray([1, w.Y, -w.X, 0, 0, 0, 0]);
        }

        for (int i = 0; i < 4; i++)
        {
            var a = Direction(car, i, 1);
            stiffness += corners[i].Rate * a.OuterProduct(a);
            load -= (corners[i].Newtons + (corners[i].Rate * seats[i] / corners[i].Ratio)) * a;
            stiffness[3 + i, 3 + i] += car.Wheels[i].TyreRate;
            load[3 + i] += car.Wheels[i].LoadAtReference - car.Wheels[i].UnsprungWeight;
        }

        for (int axle = 0; axle < 2; axle++)
        {
            var bar = axle == 0 ? car.Front : car.Rear;
            var twist = Direction(car, 2 * axle, bar.LeftRatio) - Direction(car, (2 * axle) + 1, bar.RightRatio);
            stiffness += bar.RateOneEnd * twist.OuterProduct(twist);
            load -= bar.RateOneEnd * bar.Twist * twist;
        }

        return stiffness.Solve(load);
    }

    private static double Energy(InventedCar drawn, double[] v)
    {
        var (car, corners, seats) = drawn;
        double[] z = [.. Enumerable.Range(0, 4).Select(i => v[3 + i] - v[0] - (car.Wheels[i].Y * v[1]) + (car.Wheels[i].X * v[2]))];
        double energy = car.Weights.Sum(w => w.Newtons * (v[0] + (w.Y * v[1]) - (w.X * v[2])));
        for (int i = 0; i < 4; i++)
        {
            var wheel = car.Wheels[i];
            energy += corners[i].Energy(
                z[i],
                seats[i]) + (wheel.UnsprungWeight * v[3 + i]) - (wheel.LoadAtReference * v[3 + i])
                + (wheel.TyreRate * v[3 + i] * v[3 + i] / 2);
        }

        for (int axle = 0; axle < 2; axle++)
        {
            var bar = axle == 0 ? car.Front : car.Rear;
            double twist = (bar.LeftRatio * z[2 * axle]) - (bar.RightRatio * z[(2 * axle) + 1]) + bar.Twist;
            energy += bar.RateOneEnd * twist * twist / 2;
        }

        return energy;
    }
}
