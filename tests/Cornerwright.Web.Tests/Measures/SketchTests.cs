using System.Xml.Linq;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Web.Components.Measures;

namespace Cornerwright.Web.Tests.Measures;

public sealed class SketchTests
{
    public static TheoryData<string> All => [.. Sketch.All.Select(s => s.Name)];

    [Theory]
    [MemberData(nameof(All))]
    public void Every_sketch_is_well_formed_and_measures_something(string name)
    {
        var sketch = Sketch.All.Single(s => s.Name == name);
        var svg = XElement.Parse($"<svg>{Sketches.Draw(sketch)}</svg>");
        Assert.True(Sketches.DimensionsOf(sketch) >= 1);
        Assert.Contains(svg.Descendants(), e => (string?)e.Attribute("class") == "dim");
        Assert.DoesNotContain("NaN", svg.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void No_two_sketches_are_the_same_drawing()
    {
        var drawn = Sketch.All.GroupBy(s => Sketches.Draw(s)).Where(g => g.Count() > 1).Select(g => string.Join(" = ", g));
        Assert.Empty(drawn);
    }

    [Fact]
    public void Every_reading_that_a_person_measures_has_a_sketch()
    {
        var missing = new List<string>();
        Walk(typeof(Car), missing, []);
        Assert.True(missing.Count == 0, string.Join(", ", missing));
    }

    [Theory]
    [InlineData(12)]
    [InlineData(3)]
    [InlineData(10.5)]
    public void The_gap_is_drawn_at_its_clock_position(double clock)
    {
        // The dimension runs along the ray at that hour: 12 is up, 3 is to the right.
        double angle = (clock / 12 * 2 * Math.PI) - (Math.PI / 2);
        string svg = Sketches.Draw(Sketch.Gap, clock);
        var dim = XElement.Parse($"<svg>{svg}</svg>").Descendants().Single(e => (string?)e.Attribute("class") == "dim")
            .Attribute("d")!.Value;
        double[] n = [.. dim.Split(['M', 'L', ' '], StringSplitOptions.RemoveEmptyEntries)
            .Select(t => double.Parse(t, System.Globalization.CultureInfo.InvariantCulture))];
        double dx = n[2] - n[0], dy = n[3] - n[1], length = Math.Sqrt((dx * dx) + (dy * dy));
        Assert.Equal(Math.Cos(angle), dx / length, 0.01);
        Assert.Equal(Math.Sin(angle), dy / length, 0.01);
    }

    /// <summary>
    /// Chosen and not measured: limits, allowances and wishes. Read off a sheet, a dial or the tread and not found with a tape
    /// on the car: torques,
    /// odometer, tread depth. A scan has a desk of its own, and people on board are placed in the plan.
    /// </summary>
    private static readonly Type[] WithoutSketch =
    [
        typeof(Limits), typeof(Wishes), typeof(Garage.Setting.SettingWish), typeof(Garage.Access.Fastener), typeof(Garage.Log.LogEntry),
        typeof(Garage.Log.Reminder),
        typeof(Garage.Scans.Scan), typeof(Garage.Setting.PlacedLoad), typeof(Garage.Allowing.Allowances),
    ];

    private static void Walk(Type type, List<string> missing, HashSet<Type> seen)
    {
        if (WithoutSketch.Contains(type) || !seen.Add(type))
        {
            return;
        }

        foreach (var field in RecordShape.Of(type).Fields)
        {
            if (field.Kind == FieldKind.Reading && SketchOf.Field(type, field.PropertyName) is null)
            {
                missing.Add($"{type.Name}.{field.PropertyName}");
            }
            else if (field.Kind is FieldKind.Record or FieldKind.RecordList)
            {
                Walk(field.ElementType, missing, seen);
            }
        }
    }
}
