namespace Cornerwright.Mechanics.Clearance;

/// <summary>Why an outline cannot be turned into a solid.</summary>
public enum OutlineFault
{
    None = 0,
    FewerThanThreeCorners,
    TooManyCorners,
    NotFinite,
    BelowTheSpindle,
    NoArea,
    CrossesItself,
}

/// <summary>Cuts a simple polygon into convex pieces.</summary>
/// <remarks>
/// Ears are clipped (Meisters, Amer. Math. Monthly 82 (1975) 648) and neighbours joined again while the union stays convex (Hertel and
/// Mehlhorn, FCT 1983). The pieces cover the polygon exactly. Source: those two papers.
/// </remarks>
public static class ConvexSplit
{
    /// <summary>Corners an outline may have. Cutting takes time with their square; a measured profile has some dozens.</summary>
    public const int MostCorners = 400;

    private const double Tiny = 1e-12;

    /// <summary>What keeps an outline from being a solid's profile; None if nothing does. Source: definition of a simple polygon.</summary>
    public static OutlineFault WhyNot(ReadOnlySpan<ProfilePoint> outline)
    {
        if (outline.Length > MostCorners)
        {
            return OutlineFault.TooManyCorners;
        }

        foreach (ProfilePoint p in outline)
        {
            if (!double.IsFinite(p.A + p.R))
            {
                return OutlineFault.NotFinite;
            }

            if (p.R < 0)
            {
                return OutlineFault.BelowTheSpindle;
            }
        }

        ProfilePoint[] corners = Cleaned(outline);
        if (corners.Length < 3)
        {
            return outline.Length < 3 ? OutlineFault.FewerThanThreeCorners : OutlineFault.NoArea;
        }

        if (!(Math.Abs(TwiceArea(corners)) > 1e-9))
        {
            return OutlineFault.NoArea;
        }

        for (int i = 0; i < corners.Length; i++)
        {
            for (int j = i + 2; j < corners.Length; j++)
            {
                if ((i != 0 || j != corners.Length - 1)
                    && Cross(corners[i], corners[i + 1], corners[j], corners[(j + 1) % corners.Length]))
                {
                    return OutlineFault.CrossesItself;
                }
            }
        }

        return OutlineFault.None;
    }

    /// <summary>The convex pieces, each counter-clockwise.</summary>
    /// <exception cref="ArgumentException">The outline has a fault: ask <see cref="WhyNot"/> first.</exception>
    /// <remarks>Source: Meisters (1975), Hertel and Mehlhorn (1983).</remarks>
    public static IReadOnlyList<ProfilePoint[]> Of(ReadOnlySpan<ProfilePoint> outline)
    {
        OutlineFault fault = WhyNot(outline);
        if (fault != OutlineFault.None)
        {
            throw new ArgumentException($"No profile: {fault}.", nameof(outline));
        }

        List<ProfilePoint> left = [.. Cleaned(outline)];
        if (TwiceArea([.. left]) < 0)
        {
            left.Reverse();
        }

        List<List<ProfilePoint>> pieces = Ears(left);
        for (int joins = pieces.Count; joins > 0 && JoinTwo(pieces); joins--)
        {
        }

        return [.. pieces.Select(p => p.ToArray())];
    }

    private static List<List<ProfilePoint>> Ears(List<ProfilePoint> left)
    {
        List<List<ProfilePoint>> ears = [];
        while (left.Count > 3)
        {
            int ear = -1;
            for (int i = 0; i < left.Count && ear < 0; i++)
            {
                ear = IsEar(left, i) ? i : -1;
            }

            // Rounding may hide the last ears of a nearly flat rest: the flattest corner then goes without being a piece.
            if (ear < 0)
            {
                ear = Enumerable.Range(0, left.Count).MinBy(i => Math.Abs(Turn(At(left, i - 1), left[i], At(left, i + 1))));
            }

            List<ProfilePoint> triangle = [At(left, ear - 1), left[ear], At(left, ear + 1)];
            if (Turn(triangle[0], triangle[1], triangle[2]) > Tiny)
            {
                ears.Add(triangle);
            }

            left.RemoveAt(ear);
        }

        if (Turn(left[0], left[1], left[2]) > Tiny)
        {
            ears.Add(left);
        }

        return ears;
    }

    private static bool IsEar(List<ProfilePoint> left, int i)
    {
        ProfilePoint p = At(left, i - 1), q = left[i], s = At(left, i + 1);
        if (!(Turn(p, q, s) > Tiny))
        {
            return false;
        }

        foreach (ProfilePoint x in left)
        {
            if (x != p && x != q && x != s && Turn(p, q, x) >= 0 && Turn(q, s, x) >= 0 && Turn(s, p, x) >= 0)
            {
                return false;
            }
        }

        return true;
    }

    private static bool JoinTwo(List<List<ProfilePoint>> pieces)
    {
        for (int i = 0; i < pieces.Count; i++)
        {
            for (int j = i + 1; j < pieces.Count; j++)
            {
                if (Joined(pieces[i], pieces[j]) is { } both)
                {
                    pieces[i] = both;
                    pieces.RemoveAt(j);
                    return true;
                }
            }
        }

        return false;
    }

    private static List<ProfilePoint>? Joined(List<ProfilePoint> one, List<ProfilePoint> other)
    {
        for (int i = 0; i < one.Count; i++)
        {
            int j = other.IndexOf(At(one, i + 1));
            if (j < 0 || At(other, j + 1) != one[i])
            {
                continue;
            }

            // The shared side runs one[i] -> one[i+1]; go round both without it.
            List<ProfilePoint> both = [];
            for (int k = 1; k <= one.Count; k++)
            {
                both.Add(At(one, i + k));
            }

            for (int k = 2; k < other.Count; k++)
            {
                both.Add(At(other, j + k));
            }

            bool convex = true;
            for (int k = 0; k < both.Count && convex; k++)
            {
                convex = Turn(At(both, k - 1), both[k], At(both, k + 1)) >= 0;
            }

            if (convex)
            {
                return both;
            }
        }

        return null;
    }

    private static ProfilePoint[] Cleaned(ReadOnlySpan<ProfilePoint> outline)
    {
        List<ProfilePoint> kept = [];
        foreach (ProfilePoint p in outline)
        {
            if (kept.Count == 0 || kept[^1] != p)
            {
                kept.Add(p);
            }
        }

        if (kept.Count > 1 && kept[0] == kept[^1])
        {
            kept.RemoveAt(kept.Count - 1);
        }

        return [.. kept];
    }

    private static double TwiceArea(ProfilePoint[] corners)
    {
        double sum = 0;
        for (int i = 0; i < corners.Length; i++)
        {
            ProfilePoint p = corners[i], q = corners[(i + 1) % corners.Length];
            sum += (p.A * q.R) - (q.A * p.R);
        }

        return sum;
    }

    private static ProfilePoint At(List<ProfilePoint> corners, int i) => corners[((i % corners.Count) + corners.Count) % corners.Count];

    private static double Turn(ProfilePoint p, ProfilePoint q, ProfilePoint s) => ((q.A - p.A) * (s.R - q.R)) - ((q.R - p.R) * (s.A - q.A));

    /// <summary>True when two sides that share no corner meet, touching included.</summary>
    private static bool Cross(ProfilePoint p, ProfilePoint q, ProfilePoint s, ProfilePoint t)
    {
        double a = Turn(p, q, s), b = Turn(p, q, t), c = Turn(s, t, p), d = Turn(s, t, q);
        return Opposite(a, b) && Opposite(c, d)
            && Math.Max(p.A, q.A) >= Math.Min(s.A, t.A) && Math.Max(s.A, t.A) >= Math.Min(p.A, q.A)
            && Math.Max(p.R, q.R) >= Math.Min(s.R, t.R) && Math.Max(s.R, t.R) >= Math.Min(p.R, q.R);
    }

    private static bool Opposite(double a, double b) => (a <= 0 && b >= 0) || (a >= 0 && b <= 0);
}
