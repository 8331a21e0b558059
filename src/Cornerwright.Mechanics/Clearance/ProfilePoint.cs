namespace Cornerwright.Mechanics.Clearance;

/// <summary>
/// A point of a wheel's cross-section, m, in S: a along the spindle to the street side from the hub face, r from the spindle.
/// </summary>
/// <remarks>The default is the hub-face centre. Source: docs/frames.md.</remarks>
public readonly record struct ProfilePoint(double A, double R);

/// <summary>A place on the wheel's cross-section with its outward normal (unit, in the same half-plane).</summary>
/// <remarks>The default has no direction and stands for no place. Source: docs/theory/clearance.md §2.</remarks>
public readonly record struct FeaturePoint(ProfilePoint At, double NormalA, double NormalR);
