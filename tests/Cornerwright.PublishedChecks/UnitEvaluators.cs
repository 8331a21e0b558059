using Cornerwright.Garage.Quantities;

namespace Cornerwright.PublishedChecks;

/// <summary>Units as people type them, read and converted by the Garage.</summary>
internal static class UnitEvaluators
{
    public static readonly Dictionary<string, Evaluator> All = new()
    {
        // Both ways through the project's own factors; the check's factor only cancels itself on the way to the printed unit.
        ["unit"] = (check, x) =>
        {
            var dimension = x.Choice<Dimension>("dimension");
            double si = QuantityText.Parse(x.Text("typed"), dimension, "check").Value.Si;
            var unit = Units.Find(check.Unit, dimension) ?? throw new InvalidDataException($"The Garage knows no unit \"{check.Unit}\".");
            return unit.FromSi(si) * CheckUnits.Factor(check.Unit);
        },
    };
}
