using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Web.Components.Pictures;
using Cornerwright.Workshop.Clearances;
using Cornerwright.Workshop.Surroundings;

namespace Cornerwright.Web.Components.Clearances;

/// <summary>What a proof says, in words.</summary>
public static class ProofWords
{
    /// <param name="least">What was proved.</param>
    /// <param name="paired">True where one axle carries both wheels.</param>
    public static string Of(LeastGap? least, bool paired = false)
    {
        if (least is null)
        {
            return "Nothing of the body is known near this wheel.";
        }

        // Rounded outward: what is stated must hold.
        double low = Math.Floor((least.Lower * 10_000) + 1e-6) / 10_000, high = Math.Ceiling((least.Upper * 10_000) - 1e-6) / 10_000;
        string where = $"{least.Thing.Name}, at travel {Px.Travel(least.Place.Travel)} mm, {SteerWords.Of(least.Place.Steer)}"
            + (paired ? $", other wheel at {Px.Travel(least.Place.Third)} mm" : "");
        return least.Why switch
        {
            CertifyingStop.DeepOverlap =>
                $"They overlap by at least {Px.Mm(-high)} mm: {where}. How much deeper it goes elsewhere was not followed.",
            CertifyingStop.Closed when least.Upper < 0 => $"At the worst pose they overlap by at least {Px.Mm(-high)} mm and at most "
                + $"{Px.Mm(-low)} mm, proved over every travel and steering that counts: {where}.",
            CertifyingStop.Closed => $"The least gap to the body is at least {Px.Mm(low)} mm and at most {Px.Mm(high)} mm, proved for "
                + $"every travel and steering that counts. Nearest is {where}.",
            CertifyingStop.CellLimit or CertifyingStop.NotSmooth when double.IsFinite(low) => $"The least gap to the body lies between "
                + $"{Px.Mm(low)} mm and {Px.Mm(high)} mm; a narrower proof would take too long. So far nearest is {where}.",
            _ => $"The least gap found is {Px.Mm(high)} mm, but that nothing is nearer could not be proved. Nearest found is {where}.",
        };
    }
}
