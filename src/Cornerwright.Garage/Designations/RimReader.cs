using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;

namespace Cornerwright.Garage.Designations;

/// <summary>Reads a rim designation: the size first, then hump, offset, bolt circle and bore in any order, each at most once.</summary>
internal static class RimReader
{
    public const double GreatestOffsetMm = 150;
    public const double LeastBoltCircleMm = 50;
    public const double GreatestBoltCircleMm = 300;
    public const double LeastBoreMm = 30;
    public const double GreatestBoreMm = 250;
    public const int LeastBolts = 3;
    public const int MostBolts = 10;

    private const string Examples = "a rim such as 8Jx18 ET35 5x112, 18x8 +35 5x114.3 or 15 x 6 J; CB57.1 for the bore";
    private const int MostMarks = 6;

    private static readonly string[] Flanges = ["JJ", "JK", "J", "K", "B"];
    private static readonly string[] Humps = ["EH2+", "EH2", "EH", "FH2", "FH", "CH", "H2", "H1", "H"];

    public static Checked<RimDesignation> Parse(string? text, string field)
    {
        string? cure = "Type the rim's designation.";
        RimDesignation? rim = null;
        if (text is { Length: > Characters.TextLimit })
        {
            cure = $"Type at most {Characters.TextLimit} characters.";
        }
        else if (!Characters.TrimTyped(text).IsEmpty)
        {
            var cursor = new TextCursor(Characters.TrimTyped(text));
            rim = new RimDesignation(text!);
            cure = TakeSize(ref cursor, ref rim) ?? TakeMarks(ref cursor, ref rim);
        }

        return cure is null
            ? Checked<RimDesignation>.From(rim!)
            : Checked<RimDesignation>.Wrong(new Problem(field, Characters.Shown(text), Examples, cure));
    }

    private static string? TakeSize(ref TextCursor cursor, ref RimDesignation rim)
    {
        if (TakeCode(ref cursor, out double first) is { } wrongFirst)
        {
            return wrongFirst;
        }

        cursor.SkipGaps();
        string? firstFlange = TakeFlange(ref cursor, beforeTimes: true);
        cursor.SkipGaps();
        if (!cursor.TakeTimes())
        {
            return "Begin with width and diameter, an x between them: 8Jx18 or 18x8.";
        }

        cursor.SkipGaps();
        if (TakeCode(ref cursor, out double second) is { } wrongSecond)
        {
            return wrongSecond;
        }

        cursor.SkipGaps();
        string? secondFlange = TakeFlange(ref cursor, beforeTimes: false);
        if (firstFlange is not null && secondFlange is not null)
        {
            return "The flange letter stands once, behind the width: 8Jx18 or 18x8J.";
        }

        return Assign(first, second, firstFlange, secondFlange, ref rim);
    }

    /// <summary>Which number is the width: the one with the flange letter; without one, only if it cannot be the other.</summary>
    private static string? Assign(double first, double second, string? firstFlange, string? secondFlange, ref RimDesignation rim)
    {
        bool widthFirst = firstFlange is not null || (secondFlange is null && IsWidth(first) && RimCodes.IsDiameterCode(second));
        bool diameterFirst = secondFlange is not null || (firstFlange is null && IsWidth(second) && RimCodes.IsDiameterCode(first));
        if (widthFirst && diameterFirst && first != second)
        {
            return $"Either number could be the diameter: put the flange letter behind the width, {Code(first)}Jx{Code(second)} or "
                + $"{Code(second)}Jx{Code(first)}.";
        }

        (double width, double diameter) = diameterFirst ? (second, first) : (first, second);
        if (!widthFirst && !diameterFirst && first > second)
        {
            (width, diameter) = (second, first);
        }

        if (!IsWidth(width))
        {
            return $"The width code must be {Code(RimCodes.SmallestWidthCode)} to "
                + $"{Code(RimCodes.LargestWidthCode)} in steps of a quarter inch; size first, then the rest (8Jx18 ET35 5x112).";
        }

        if (!RimCodes.IsDiameterCode(diameter))
        {
            return $"The diameter code must be {Code(RimCodes.SmallestDiameterCode)} to {Code(RimCodes.LargestDiameterCode)}, whole or "
                + $"half; size first, then the rest (8Jx18 ET35 5x112).";
        }

        rim = rim with { WidthCode = width, DiameterCode = diameter, Flange = firstFlange ?? secondFlange };
        return null;
    }

    private static string? TakeMarks(ref TextCursor cursor, ref RimDesignation rim)
    {
        for (int i = 0; i < MostMarks; i++)
        {
            cursor.SkipGaps();
            if (cursor.AtEnd)
            {
                return null;
            }

            if (TakeMark(ref cursor, ref rim) is { } cure)
            {
                return cure;
            }
        }

        return "There are more marks than a rim has: keep size, hump, offset, bolt circle and bore.";
    }

    private static string? TakeMark(ref TextCursor cursor, ref RimDesignation rim)
    {
        foreach (string hump in Humps)
        {
            if (cursor.TakeWhole(hump))
            {
                bool again = rim.Hump is not null;
                rim = rim with { Hump = hump };
                return again ? "The hump is given twice: keep one." : null;
            }
        }

        if (cursor.Take("ET") || cursor.Take("IS") || cursor.Next == '+' || Characters.IsMinus(cursor.Next))
        {
            return TakeOffset(ref cursor, ref rim);
        }

        if (cursor.Take("CB") || cursor.Take("Ø") || cursor.Take("⌀"))
        {
            return TakeBore(ref cursor, ref rim);
        }

        return cursor.AtDigit
            ? TakeBolts(ref cursor, ref rim)
            : $"\"{cursor.Word()}\" is not a mark known here. Known: H2 and other humps, ET35 or +35, 5x112 or 5/112, CB57.1.";
    }

    private static string? TakeOffset(ref TextCursor cursor, ref RimDesignation rim)
    {
        cursor.SkipGaps();
        bool negative = Characters.IsMinus(cursor.Next);
        cursor.At += negative || cursor.Next == '+' ? 1 : 0;
        cursor.SkipGaps();
        if (TakeMillimetres(ref cursor, "the offset", 0, GreatestOffsetMm, out double offset) is { } cure)
        {
            return cure;
        }

        bool again = rim.OffsetMm is not null;
        rim = rim with { OffsetMm = negative && offset != 0 ? -offset : offset };
        return again ? "The offset is given twice: keep one." : null;
    }

    private static string? TakeBore(ref TextCursor cursor, ref RimDesignation rim)
    {
        cursor.SkipGaps();
        if (TakeMillimetres(ref cursor, "the centre bore", LeastBoreMm, GreatestBoreMm, out double bore) is { } cure)
        {
            return cure;
        }

        bool again = rim.CentreBoreMm is not null;
        rim = rim with { CentreBoreMm = bore };
        return again ? "The centre bore is given twice: keep one." : null;
    }

    private static string? TakeBolts(ref TextCursor cursor, ref RimDesignation rim)
    {
        ReadOnlySpan<char> word = cursor.Word();
        bool counted = cursor.TakeInteger(out int count);
        cursor.SkipGaps();
        if (!counted || !(cursor.TakeTimes() || cursor.Take("/")))
        {
            return $"\"{word}\" stands alone: write an offset as ET35 or +35, a bolt circle as 5x112, a bore as CB57.1.";
        }

        if (count is < LeastBolts or > MostBolts)
        {
            return $"The number of bolts must be {LeastBolts} to {MostBolts}.";
        }

        cursor.SkipGaps();
        if (TakeMillimetres(ref cursor, "the bolt circle", LeastBoltCircleMm, GreatestBoltCircleMm, out double circle) is { } cure)
        {
            return cure;
        }

        bool again = rim.BoltCount is not null;
        rim = rim with { BoltCount = count, BoltCircleMm = circle };
        return again ? "The bolt circle is given twice: keep the one that is used." : null;
    }

    private static string? TakeMillimetres(ref TextCursor cursor, string what, double least, double greatest, out double value)
    {
        ReadOnlySpan<char> word = cursor.Run();
        NumberFault fault = cursor.TakeNumber(fractions: false, out value);
        if (fault != NumberFault.None)
        {
            return fault == NumberFault.Missing ? $"A number must follow for {what}." : QuantityReader.Explain(fault, word);
        }

        bool runsOn = cursor.Next is '.' or ',' or '/' or 'x' or 'X' or '×' or '*' or '"';
        cursor.SkipGaps();
        cursor.TakeWhole("mm");
        if (runsOn)
        {
            return $"\"{word}\" cannot be read as {what}: put a gap between it and what follows.";
        }

        return value >= least && value <= greatest && Math.Round(value, 3) == value
            ? null
            : $"The value of {what} must be {Code(least)} to {Code(greatest)} mm (in millimetres, not inches), at most three decimals.";
    }

    /// <summary>A width or diameter code; a fraction only in quarters, since 18 5/112 is a diameter and a bolt circle.</summary>
    private static string? TakeCode(ref TextCursor cursor, out double code)
    {
        int start = cursor.At;
        if (cursor.TakeNumber(fractions: true, out code) == NumberFault.None && Math.Floor(code * 4) == code * 4)
        {
            return null;
        }

        cursor.At = start;
        ReadOnlySpan<char> word = cursor.Run();
        NumberFault fault = cursor.TakeNumber(fractions: false, out code);
        return fault switch
        {
            NumberFault.None => null,
            NumberFault.Missing => "Begin with width and diameter: 8Jx18 or 18x8.",
            _ => QuantityReader.Explain(fault, word),
        };
    }

    private static string? TakeFlange(ref TextCursor cursor, bool beforeTimes)
    {
        int start = cursor.At;
        foreach (string flange in Flanges)
        {
            bool taken = cursor.Take(flange);
            if (taken && (!cursor.AtLetter || (beforeTimes && cursor.Next is 'x' or 'X')) && (beforeTimes || !cursor.AtDigit))
            {
                return flange;
            }

            cursor.At = start;
        }

        return null;
    }

    private static bool IsWidth(double code) =>
        code >= RimCodes.SmallestWidthCode && code <= RimCodes.LargestWidthCode && Math.Floor(code * 4) == code * 4;

    private static string Code(double value) => value.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);
}
