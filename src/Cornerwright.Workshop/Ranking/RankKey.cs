using Cornerwright.Garage.Builds;

namespace Cornerwright.Workshop.Ranking;

/// <summary>
/// The order of choices: fewer gaps in the parts' data first, then the surer by whole per cent, then the preference, then
/// cost, height, softness, and last the order of the parts on the shelf, so that no two are equal.
/// </summary>
internal readonly record struct RankKey(int Unknown, int Doubt, double Preferred, decimal Cost, double HeightMiss, double Frequency,
    int Suspension, int WheelSet) : IComparable<RankKey>
{
    public int CompareTo(RankKey other)
    {
        int order = Unknown.CompareTo(other.Unknown);
        order = order != 0 ? order : Doubt.CompareTo(other.Doubt);
        order = order != 0 ? order : Preferred.CompareTo(other.Preferred);
        order = order != 0 ? order : Cost.CompareTo(other.Cost);
        order = order != 0 ? order : HeightMiss.CompareTo(other.HeightMiss);
        order = order != 0 ? order : Frequency.CompareTo(other.Frequency);
        order = order != 0 ? order : Suspension.CompareTo(other.Suspension);
        return order != 0 ? order : WheelSet.CompareTo(other.WheelSet);
    }

    /// <param name="probability">That everything holds, or a bound of it.</param>
    /// <returns>
    /// 100 less whole per cent, rounded down as printed: what is printed decides, not digits beyond what first order knows. Above 99 % all
    /// are alike. Never grows with the probability.
    /// </returns>
    public static int DoubtOf(double probability) =>
        probability > AllAlike ? 0 : 100 - (int)Math.Floor((100 * probability) + 1e-9);

    private const double AllAlike = 0.99;

    /// <summary>The preference as a number, less being better. Rounded as people read it.</summary>
    public static double PreferenceOf(Preference preference, decimal cost, double heightMiss, double frequency) => preference switch
    {
        Preference.Softest => Known(Math.Round(frequency, 2)),
        Preference.Stiffest => Known(-Math.Round(frequency, 2)),
        Preference.NearestHeight => Known(Math.Round(heightMiss, 4)),
        _ => (double)cost,
    };

    // What is not known comes last, and compares.
    private static double Known(double value) => double.IsNaN(value) ? double.MaxValue : value;
}

/// <summary>A choice that holds.</summary>
/// <param name="Suspension">Its place among the candidates.</param>
/// <param name="WheelSet">Its place among the wheel sets.</param>
internal sealed record HeldChoice(int Suspension, int WheelSet, RankKey Key, Weighed Weighed, ChoiceVerdict Verdict);
