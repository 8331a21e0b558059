using Cornerwright.Mechanics.Clearance.Certifying;
using Cornerwright.Web.Components.Pictures;
using Cornerwright.Workshop.Clearances;

namespace Cornerwright.Web.Components.Clearances;

/// <summary>What a proof says, in words.</summary>
public static class ProofWords
{
    public static string Of(LeastGap? least)
    {
        if (least is null)
        {
            return "Nothing of the body is known near this wheel.";
        }

        // Rounded outward: what is stated must hold.
        string low = Math.Abs(Math.Floor((least.Lower * 10_000) + 1e-6)) is var l && double.IsFinite(l) ? Px.Mm(Math.Floor((least.Lower * 10_000) + 1e-6) / 10_000) : "";
        string high = Px.Mm(Math.Ceiling((least.Upper * 10_000) - 1e-6) / 10_000);
        string where = $"nearest is {least.Thing.Name}, at travel {Px.Travel(least.Place.Travel)} mm, {SteerWords.Of(least.Place.Steer)}";
        return least.Why switch
        {
            CertifyingStop.DeepOverlap => $"They overlap by at least {Px.Mm(-least.Upper)} mm; {where}.",
            CertifyingStop.Closed when least.Upper < 0 => $"They overlap by at least {Px.Mm(Math.Floor((-least.Upper * 10_000) + 1e-6) / 10_000)} mm and at most {Px.Mm(Math.Ceiling((-least.Lower * 10_000) - 1e-6) / 10_000)} mm, whatever travel and steering; {where}.",
            CertifyingStop.Closed => $"The least gap to the body is at least {low} mm and at most {high} mm, proved for every travel and steering that counts; {where}.",
            CertifyingStop.CellLimit or CertifyingStop.NotSmooth when double.IsFinite(least.Lower) => $"The least gap to the body lies between {low} mm and {high} mm; a narrower proof would take too long. So far {where}.",
            _ => $"The least gap found is {high} mm, but that nothing is nearer could not be proved; {where}.",
        };
    }
}
