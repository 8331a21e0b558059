using Cornerwright.Mechanics.Loads;

namespace Cornerwright.Mechanics.Tests.Loads;

/// <summary>A corner whose force at the wheel grows with travel: straight, or hardening with the cube.</summary>
internal sealed record InventedCorner(double Newtons, double Rate, double Cube, double Ratio) : ICornerForce
{
    /// <summary>The seat acts as travel times the motion ratio, as on a spring whose lever does not change.</summary>
    public bool At(double travel, double seatRise, out CornerForce force)
    {
        double z = travel + (seatRise / Ratio), slope = Rate + (3 * Cube * z * z);
        force = new CornerForce(Newtons + (Rate * z) + (Cube * z * z * z), slope, slope / Ratio);
        return Math.Abs(travel) < 0.5;
    }

    public double Energy(double travel, double seatRise)
    {
        double z = travel + (seatRise / Ratio);
        return (Newtons * z) + (Rate * z * z / 2) + (Cube * z * z * z * z / 4);
    }
}

/// <summary>Random cars that stand in balance at their reference, with something then put on them and turned.</summary>
internal sealed record InventedCar(CarOnWheels Car, IReadOnlyList<InventedCorner> Corners, double[] Seats)
{
    public static InventedCar Draw(Random random, double cube)
    {
        double Between(double a, double b) => a + ((b - a) * random.NextDouble());
        double front = Between(1.0, 1.6), rear = -Between(1.0, 1.6), trackFront = Between(1.3, 1.7), trackRear = Between(1.3, 1.7);
        (double X, double Y)[] places = [(front, trackFront / 2), (front, -trackFront / 2), (rear, trackRear / 2), (rear, -trackRear / 2)];
        double frontRate = Between(15e3, 60e3), rearRate = Between(15e3, 60e3);
        InventedCorner[] corners = [
            .. Enumerable.Range(0, 4).Select(
                i => new InventedCorner(
                    Between(2000, 4500), (i < 2 ? frontRate : rearRate) * Between(0.9, 1.1), cube * Between(0.5, 2), Between(0.6, 1.0)))];
        var bars = new[] { Bar(), Bar() };
        BarUnderCar Bar() => new(random.Next(3) == 0 ? 0 : Between(5e3, 40e3), Between(0.4, 1), Between(0.4, 1), Between(-0.003, 0.003));
        double[] held = [
            .. Enumerable.Range(0, 4).Select(
                i => corners[i].Newtons
                + ((i % 2 == 0 ? bars[i / 2].LeftRatio : -bars[i / 2].RightRatio) * bars[i / 2].RateOneEnd * bars[i / 2].Twist))];
        WheelUnderCar[] wheels = [.. Enumerable.Range(0, 4).Select(i =>
        {
            double unsprung = Between(250, 500);
            return new WheelUnderCar(places[i].X, places[i].Y, unsprung, Between(150e3, 300e3), held[i] + unsprung);
        })];
        var driver = new WeightOnBody(Between(-900, 900), Between(-0.5, 0.5), Between(-0.5, 0.5));
        var car = new CarOnWheels(wheels, bars[0], bars[1], [CarOnWheels.Resultant(wheels, held), driver]);
        return new InventedCar(car, corners, [.. Enumerable.Range(0, 4).Select(_ => Between(-0.012, 0.012))]);
    }

    public CarStance Solve() => CarBalance.Solve(Car, Corners, Seats);
}
