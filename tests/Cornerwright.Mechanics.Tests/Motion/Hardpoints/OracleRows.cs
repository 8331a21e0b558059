using System.Text.Json;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Tests.Motion.Hardpoints;

/// <summary>Rows of the oracle files in data/ (see the README there): mm and degrees, turned into m and rad.</summary>
internal static class OracleRows
{
    public const double PositionMm = 1e-6;      // positions and lengths
    public const double AngleDeg = 1e-8;
    public const double Rate = 1e-8;            // relative to the rate
    public const double SmallRate = 1e-3;       // in the file's unit: a rate below it is compared as if it were this large

    public static JsonElement File(string name)
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !System.IO.File.Exists(Path.Combine(folder.FullName, "Cornerwright.slnx")))
        {
            folder = folder.Parent;
        }

        Assert.NotNull(folder);
        string path = Path.Combine(folder.FullName, "tests", "Cornerwright.Mechanics.Tests", "Motion", "Hardpoints", "data", name);
        return JsonDocument.Parse(System.IO.File.ReadAllText(path)).RootElement;
    }

    public static double Number(this JsonElement row, string name) => row.GetProperty(name).GetDouble();

    public static double Metres(this JsonElement row, string name) => row.Number(name) / 1000;

    public static double Radians(this JsonElement row, string name) => row.Number(name) * Math.PI / 180;

    /// <summary>A point or direction as it stands in the file.</summary>
    public static Vec3 Triple(this JsonElement row, string name)
    {
        JsonElement three = row.GetProperty(name);
        return new(three[0].GetDouble(), three[1].GetDouble(), three[2].GetDouble());
    }

    public static Vec3 Point(this JsonElement row, string name) => row.Triple(name) / 1000;

    public static double Degrees(double rad) => rad * 180 / Math.PI;
}

/// <summary>What one row asks and what we answered: every field of the row must be named, or the test fails.</summary>
internal sealed class RowCheck(JsonElement row, string label)
{
    private readonly HashSet<string> named = [];

    public RowCheck Given(params string[] names)
    {
        named.UnionWith(names);
        return this;
    }

    public RowCheck PositionMm(string name, Vec3 metres)
    {
        Vec3 off = (metres * 1000) - row.Triple(name);
        return Within(name, Math.Max(Math.Abs(off.X), Math.Max(Math.Abs(off.Y), Math.Abs(off.Z))), OracleRows.PositionMm);
    }

    public RowCheck LengthMm(string name, double metres) =>
        Within(name, Math.Abs((metres * 1000) - row.Number(name)), OracleRows.PositionMm);

    public RowCheck Direction(string name, Vec3 unit) =>
        Within(name, (unit - row.Triple(name)).Length, OracleRows.AngleDeg * Math.PI / 180);

    public RowCheck AngleDeg(string name, double rad) =>
        Within(name, Math.Abs(OracleRows.Degrees(rad) - row.Number(name)), OracleRows.AngleDeg);

    public RowCheck RateOf(string name, double value)
    {
        double expected = row.Number(name);
        return Within(name, Math.Abs(value - expected), OracleRows.Rate * Math.Max(Math.Abs(expected), OracleRows.SmallRate));
    }

    /// <summary>Fails when the row holds a field that nobody compared.</summary>
    public void Complete()
    {
        var left = row.EnumerateObject().Select(field => field.Name).Where(name => !named.Contains(name)).ToList();
        Assert.True(left.Count == 0, $"{label}: not compared: {string.Join(", ", left)}");
    }

    private RowCheck Within(string name, double off, double allowed)
    {
        named.Add(name);
        Assert.True(off <= allowed, $"{label}: {name} is off by {off:g3}, allowed {allowed:g3}");
        return this;
    }
}
