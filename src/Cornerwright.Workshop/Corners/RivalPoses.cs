using Cornerwright.Workshop.Judging;

namespace Cornerwright.Workshop.Corners;

/// <summary>An end of travel at which a thing is nearly as close to the wheel as in its worst state. The default is none.</summary>
/// <param name="Exists">False for none.</param>
/// <param name="Share">Of the way from full droop to full bump.</param>
/// <param name="Steer">rad, left positive.</param>
/// <param name="Along">The place on the thing.</param>
/// <param name="Gap">m, at the best estimate.</param>
/// <param name="Other">The other wheel's travel, as <paramref name="Share"/>; 0 where it plays no part.</param>
/// <param name="State">Which state of load, at rest first.</param>
internal readonly record struct RivalPose(
    bool Exists, double Share, double Steer, double Along, double Gap, double Other = 0, int State = 0);

/// <summary>The nearest rivals of a worst state, each apart from the others: the least gap under doubt is the least of all.</summary>
internal readonly record struct RivalPoses(RivalPose First, RivalPose Second, RivalPose Third)
{
    /// <summary>How many are followed.</summary>
    public const int Most = 3;

    /// <summary>A pose whose gap is larger by more than this is no rival, m: the doubt of a gap read with a tape stays below it.</summary>
    public const double Within = 0.015;

    /// <summary>Share of the travel within which a pose counts as the worst state itself.</summary>
    public const double Apart = 0.15;

    /// <summary>One more, no nearer than those there are; what has no room is left out.</summary>
    public RivalPoses With(in RivalPose next) => !First.Exists ? this with { First = next }
        : !Second.Exists ? this with { Second = next } : !Third.Exists ? this with { Third = next } : this;
}
