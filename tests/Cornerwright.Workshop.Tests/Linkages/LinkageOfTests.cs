using System.Text.Json;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Workshop.Linkages;

namespace Cornerwright.Workshop.Tests.Linkages;

public sealed class LinkageOfTests
{
    private const double Degree = Math.PI / 180;

    // Rows computed independently at 40 digits: tests/Cornerwright.Mechanics.Tests/Motion/Hardpoints/data. What a person types into the
    // table is these corners to the last digit, so the answers agree to rounding.
    [Theory]
    [InlineData("M1")]
    [InlineData("M3")]
    [InlineData("W1")]
    [InlineData("W3")]
    [InlineData("F1")]
    [InlineData("S1")]
    public void A_typed_table_moves_as_the_independent_rows_say(string id)
    {
        var car = OracleTables.Car(id);
        Assert.Empty(Garage.Files.Consistency.Check(car));
        CheckRows(id, LinkageOf.Corner(car, CornerPlace.FrontLeft).Value, 1);
        var mirrored = car with { FrontRight = car.FrontLeft with { Hardpoints = new HardpointTable { Mirrored = true } } };
        CheckRows(id, LinkageOf.Corner(mirrored, CornerPlace.FrontRight).Value, -1);
    }

    [Fact]
    public void A_measured_axis_length_sets_the_lower_reference()
    {
        var car = OracleTables.Car("M1");
        car = car with { FrontLeft = car.FrontLeft with { SpringAxisLength = OracleTables.Typed(512.5, "mm", Dimension.Length) } };
        var linkage = LinkageOf.Corner(car, CornerPlace.FrontLeft).Value;
        var motion = new HardpointMotion(linkage.Ready());
        Assert.Equal(Reach.Reached, motion.StationAt(0, Station.Spring, out StationState spring));
        Assert.Equal(0.5125, spring.Length, 1e-12);
    }

    [Fact]
    public void Every_missing_point_is_named_at_once()
    {
        var car = OracleTables.Car("M1");
        car = WithTable(car, t => t with { StrutTop = null, TieOuter = t.TieOuter! with { Z = null } });
        var problems = LinkageOf.Corner(car, CornerPlace.FrontLeft).Problems;
        Assert.Equal(["front left corner / hardpoints / Tie rod, outer joint", "front left corner / hardpoints / Strut top"],
            problems.Select(p => p.Field));
        Assert.Contains("no table", LinkageOf.Corner(car, CornerPlace.RearLeft).Problems[0].Given, StringComparison.Ordinal);
    }

    [Fact]
    public void A_carrier_that_the_kind_lacks_is_refused_by_the_file_too()
    {
        var car = WithTable(OracleTables.Car("W1"), t => t with { SpringOn = StationCarrier.Strut, RackOn = RackRod.LowerFrontLink });
        var inFile = Garage.Files.Consistency.Check(car);
        Assert.Equal(inFile, LinkageOf.Corner(car, CornerPlace.FrontLeft).Problems);
        Assert.Equal(2, inFile.Count);
        Assert.Equal("front left corner / hardpoints / Spring works on: \"strut\" is not accepted. Allowed: lowerArm, upperArm, carrier, "
            + "rocker. A linkage of kind doubleWishbone has no such part: choose one that it has, or another kind.", inFile[0].ToString());
        Assert.Empty(Garage.Files.Consistency.Check(WithTable(car, HardpointNeeds.Fitted)));
    }

    [Fact]
    public void Points_of_the_wrong_side_or_typed_twice_are_named()
    {
        var car = OracleTables.Car("W1");
        var swapped = car with { FrontRight = car.FrontLeft };
        Assert.Contains("Left is positive", LinkageOf.Corner(swapped, CornerPlace.FrontRight).Problems[0].Cure, StringComparison.Ordinal);
        var twice = WithTable(car, t => t with { UpperBall = t.UpperFrontInner });
        Assert.Equal("front left corner / hardpoints / upper ball joint", LinkageOf.Corner(twice, CornerPlace.FrontLeft).Problems[0].Field);

        // The tie rod lies on the lower arm's front leg: the carrier can steer by itself.
        var loose = WithTable(car, t => t with { TieInner = t.LowerFrontInner, TieOuter = t.LowerBall });
        var problem = LinkageOf.Corner(loose, CornerPlace.FrontLeft).Problems[0];
        Assert.Equal("lower arm, front pivot - lower ball joint and tie rod, inner joint - tie rod, outer joint", problem.Given);
    }

    [Fact]
    public void Tables_with_points_anywhere_give_a_linkage_or_a_reason()
    {
        const int Seed = 20261125;
        var random = new Random(Seed);
        int solved = 0;
        foreach (string id in (string[])["M1", "W1", "W3", "F1", "S1"])
        {
            var car = OracleTables.Car(id);
            for (int n = 0; n < 200; n++)
            {
                double far = Math.Pow(10, (random.NextDouble() * 3) - 0.5);
                double Off() => ((random.NextDouble() * 2) - 1) * far;
                var table = car.FrontLeft.Hardpoints!;
                foreach (var field in HardpointNeeds.Of(table))
                {
                    var p = (BodyPoint)field.Get(table)!;
                    table = Garage.Fields.RecordShape.Of<HardpointTable>().With(table, field,
                        OracleTables.Point([(p.X!.Si * 1000) + Off(), (p.Y!.Si * 1000) + Off(), (p.Z!.Si * 1000) + Off()]));
                }

                var found = LinkageOf.Corner(WithTable(car, _ => table), CornerPlace.FrontLeft);
                if (!found.Ok)
                {
                    Assert.All(found.Problems, p =>
                        Assert.False(p.ToString().Contains("NaN", StringComparison.Ordinal), $"seed {Seed}: {p}"));
                    continue;
                }

                solved++;
                var motion = new HardpointMotion(found.Value.Ready());
                for (int mm = -100; mm <= 100; mm += 25)
                {
                    Reach reach = motion.WheelAt(mm / 1000.0, out WheelMotionState wheel);
                    Assert.True(double.IsFinite(wheel.Camber + wheel.Toe + wheel.LateralShift) && reach != Reach.NotFinite,
                        $"seed {Seed}, {id} {n}");
                }
            }
        }

        Assert.InRange(solved, 500, 1000);
    }

    private static Car WithTable(Car car, Func<HardpointTable, HardpointTable> change) =>
        car with { FrontLeft = car.FrontLeft with { Hardpoints = change(car.FrontLeft.Hardpoints!) } };

    private static void CheckRows(string id, CornerHardpoints corner, int side)
    {
        var follower = new KnuckleFollower(corner.Ready());
        int rows = 0;
        foreach (JsonProperty sweep in OracleTables.Read(id + ".json").GetProperty("sweeps").EnumerateObject())
        {
            int at = sweep.Name.IndexOf("slide", StringComparison.Ordinal);
            double plate = at < 0 ? 0 : double.Parse(sweep.Name[(at + 5)..], System.Globalization.CultureInfo.InvariantCulture) / 1000;
            foreach (JsonElement row in sweep.Value.EnumerateArray())
            {
                double Number(string name) => row.GetProperty(name).GetDouble();
                string label = $"{id} {sweep.Name} {Number("travel")} {Number("rack")}";
                Assert.Equal(Reach.Reached, follower.MoveTo(Number("travel") / 1000, side * Number("rack") / 1000, plate));
                Assert.True(WheelGeometry.TryRead(follower, out WheelGeometry wheel), label);
                Assert.Equal(Number("camber_deg"), wheel.Camber / Degree, 1e-8);
                Assert.Equal(Number("toe_deg"), wheel.Toe / Degree, 1e-8);
                Assert.Equal(Number("spring_length"), wheel.Spring!.Value.Length * 1000, 1e-6);
                Assert.Equal(Number("damper_length"), wheel.Damper!.Value.Length * 1000, 1e-6);
                Assert.Equal(Number("motion_ratio"), -wheel.Spring.Value.MotionRatio, 1e-8);
                Vec3 centre = wheel.Centre * 1000;
                Assert.Equal(row.GetProperty("wheel_center")[1].GetDouble(), side * centre.Y, 1e-6);
                rows++;
            }
        }

        Assert.InRange(rows, 17, 200);
    }
}
