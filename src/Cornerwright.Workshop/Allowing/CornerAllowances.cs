using Cornerwright.Garage.Allowing;
using Cornerwright.Garage.Builds;
using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Quantities;
using Cornerwright.Garage.Readings;

namespace Cornerwright.Workshop.Allowing;

/// <summary>The allowances in force as numbers, SI: lengths in m; of a doubt its standard deviation.</summary>
internal sealed record CornerAllowances
{
    /// <summary>On the tyre's radius.</summary>
    public double Growth { get; init; }

    /// <summary>To each side of the tyre: of an older file, else 0.</summary>
    public double Lean { get; init; }

    /// <summary>Outboard, at the top of the outer wheel's tyre.</summary>
    public double Top { get; init; }

    /// <summary>Inboard, at hub height.</summary>
    public double In { get; init; }

    /// <summary>Inboard against what moves with the wheel, at hub height.</summary>
    public double OnWheel { get; init; }

    /// <summary>Rearward.</summary>
    public double Back { get; init; }

    /// <summary>Of wheel travel, beyond full bump.</summary>
    public double BumpBeyond { get; init; }

    /// <summary>Of a new main spring's length.</summary>
    public double Settling { get; init; }

    public double RideFriction { get; init; }
    public double RunoutRadial { get; init; }
    public double RunoutSideways { get; init; }

    /// <summary>Share of the rate.</summary>
    public double SpringRate { get; init; }

    public double SpringLength { get; init; }

    /// <summary>True where something moves the wheel among the things of the body.</summary>
    public bool Sways => Top > 0 || In > 0 || Back > 0;

    /// <summary>The build on a car that stands still: nothing is allowed for but what is not known of its springs.</summary>
    public static Build AtRest(Car car, Build build)
    {
        var lines = AllowancesInForce.Of(car, build);
        var none = Reading.Of("0 mm", Dimension.Length);
        return build with
        {
            Limits = build.Limits with { TyreGrowth = null, TyreShift = none },
            Allowances = Allowances.None with
            {
                Use = lines.Use,
                SpringRate = lines.Line(nameof(Allowances.SpringRate)).Value,
                SpringLength = lines.Line(nameof(Allowances.SpringLength)).Value,
            },
        };
    }

    public static CornerAllowances Of(Car car, Build build)
    {
        var lines = AllowancesInForce.Of(car, build);
        return new CornerAllowances
        {
            Lean = lines.LeanBothWays ?? 0,
            Growth = lines.Of(nameof(Allowances.TyreGrowth)),
            Top = lines.Of(nameof(Allowances.TyreTopOut)),
            In = lines.Of(nameof(Allowances.TyreIn)),
            OnWheel = lines.Of(nameof(Allowances.TyreOnWheel)),
            Back = lines.Of(nameof(Allowances.WheelBack)),
            BumpBeyond = lines.Of(nameof(Allowances.BumpBeyond)),
            Settling = lines.Of(nameof(Allowances.Settling)),
            RideFriction = lines.Of(nameof(Allowances.RideFriction)) / 2,
            RunoutRadial = lines.Of(nameof(Allowances.RunoutRadial)) / 2,
            RunoutSideways = lines.Of(nameof(Allowances.RunoutSideways)) / 2,
            SpringRate = lines.Of(nameof(Allowances.SpringRate)) / 2,
            SpringLength = lines.Of(nameof(Allowances.SpringLength)) / 2,
        };
    }
}
