using Cornerwright.Garage.Problems;
using Cornerwright.Garage.Quantities;

namespace Cornerwright.Garage.Designations;

/// <summary>Reads a tyre designation from left to right: prefix, size, then marks in any order, each at most once.</summary>
internal static class TyreReader
{
    public const int LeastWidthMm = 95;
    public const int GreatestWidthMm = 455;
    public const int LeastAspect = 20;
    public const int GreatestAspect = 95;

    private const string Examples = "a size such as 205/55R16 91V, P215/65R15 95H, LT245/75R16/E 120/116Q or 31x10.50R15LT 109Q";
    private const string LoadRanges = "BCDEFGHJLMN";
    private const int MostMarks = 8;

    private static readonly string[] SpeedSymbols =
    [
        "A1", "A2", "A3", "A4", "A5", "A6", "A7", "A8", "B", "C", "D", "E", "F", "G", "J", "K", "L", "M", "N",
        "P", "Q", "R", "S", "T", "U", "H", "V", "W", "Y",
    ];

    public static Checked<TyreDesignation> Parse(string? text, string field)
    {
        string? cure = "Type the tyre's size.";
        TyreDesignation? tyre = null;
        if (text is { Length: > Characters.TextLimit })
        {
            cure = $"Type at most {Characters.TextLimit} characters.";
        }
        else if (!Characters.TrimTyped(text).IsEmpty)
        {
            var cursor = new TextCursor(Characters.TrimTyped(text));
            tyre = new TyreDesignation(text!) { Prefix = TakePrefix(ref cursor) };
            cure = TakeSize(ref cursor, ref tyre) ?? TakeMarks(ref cursor, ref tyre);
        }

        return cure is null
            ? Checked<TyreDesignation>.From(tyre!)
            : Checked<TyreDesignation>.Wrong(new Problem(field, Characters.Shown(text), Examples, cure));
    }

    private static TyrePrefix TakePrefix(ref TextCursor cursor)
    {
        TyrePrefix prefix = cursor.Take("LT") ? TyrePrefix.LT
            : cursor.Take("HL") ? TyrePrefix.HL
            : cursor.Take("P") ? TyrePrefix.P
            : cursor.Take("T") ? TyrePrefix.T
            : TyrePrefix.None;
        cursor.SkipGaps();
        return prefix;
    }

    private static string? TakeSize(ref TextCursor cursor, ref TyreDesignation tyre)
    {
        int start = cursor.At;
        ReadOnlySpan<char> word = cursor.Run();
        NumberFault fault = cursor.TakeNumber(fractions: false, out double first);
        if (fault != NumberFault.None)
        {
            return fault == NumberFault.Missing ? "Begin with the size, e.g. 205/55R16." : QuantityReader.Explain(fault, word);
        }

        cursor.SkipGaps();
        if (cursor.TakeTimes())
        {
            return TakeFlotation(ref cursor, ref tyre, first);
        }

        if (cursor.Next != '/')
        {
            return "Write a slash between width and aspect ratio: 205/55R16. Sizes without an aspect ratio are not known here.";
        }

        cursor.At = start;
        bool wholeWidth = cursor.TakeInteger(out int width);
        cursor.SkipGaps();
        cursor.Take("/");
        cursor.SkipGaps();
        bool wholeAspect = cursor.TakeInteger(out int aspect);
        if (!wholeWidth || width is < LeastWidthMm or > GreatestWidthMm)
        {
            return $"The width must be a whole number from {LeastWidthMm} to {GreatestWidthMm} mm.";
        }

        if (!wholeAspect || aspect is < LeastAspect or > GreatestAspect)
        {
            return $"The aspect ratio must be a whole number from {LeastAspect} to {GreatestAspect} percent.";
        }

        tyre = tyre with { WidthMm = width, AspectPercent = aspect };
        return TakeStructureAndRim(ref cursor, ref tyre);
    }

    private static string? TakeFlotation(ref TextCursor cursor, ref TyreDesignation tyre, double diameter)
    {
        if (tyre.Prefix != TyrePrefix.None)
        {
            return "A size in inches (31x10.50R15LT) has no letters before it; LT stands behind.";
        }

        cursor.SkipGaps();
        ReadOnlySpan<char> word = cursor.Run();
        NumberFault fault = cursor.TakeNumber(fractions: false, out double width);
        if (fault != NumberFault.None)
        {
            return QuantityReader.Explain(fault, word);
        }

        if (!(diameter is >= 20 and <= 60 && Hundredths(diameter)))
        {
            return "The outer diameter before the x must be 20 to 60 in, e.g. 31x10.50R15LT.";
        }

        if (!(width is >= 5 and <= 20 && Hundredths(width)))
        {
            return "The section width behind the x must be 5 to 20 in, e.g. 31x10.50R15LT.";
        }

        tyre = tyre with { FlotationDiameterIn = diameter, FlotationWidthIn = width };
        return TakeStructureAndRim(ref cursor, ref tyre);
    }

    private static string? TakeStructureAndRim(ref TextCursor cursor, ref TyreDesignation tyre)
    {
        cursor.SkipGaps();
        if (cursor.AtDigit || cursor.Next == '/' || cursor.AtEnd)
        {
            return "The construction is missing before the rim diameter: write R "
                + "(radial), D or - (diagonal) or B (bias-belted), then the rim, e.g. 205/55R16.";
        }

        bool z = cursor.Take("Z");
        TyreConstruction? construction = cursor.Take("R") ? TyreConstruction.Radial
            : !z && (cursor.Take("D") || cursor.Take("-")) ? TyreConstruction.Diagonal
            : !z && cursor.Take("B") ? TyreConstruction.BiasBelted
            : null;
        bool runFlat = construction == TyreConstruction.Radial && cursor.Take("F");
        cursor.SkipGaps();
        if (construction is null || !cursor.AtDigit)
        {
            return "Between aspect ratio and rim stands R, ZR, RF, ZRF, D, - or B only; the speed symbol stands behind the load index "
                + "(205/55R16 91V).";
        }

        ReadOnlySpan<char> word = cursor.Run();
        NumberFault fault = cursor.TakeNumber(fractions: false, out double rim);
        if (fault != NumberFault.None)
        {
            return QuantityReader.Explain(fault, word);
        }

        if (!RimCodes.IsDiameterCode(rim))
        {
            return FormattableString.Invariant(
                $"The rim diameter must be a code from {RimCodes.SmallestDiameterCode} to {RimCodes.LargestDiameterCode}, whole or half.");
        }

        tyre = tyre with { Construction = construction.Value, Z = z, RunFlat = runFlat, RimCode = rim };
        if (tyre.IsFlotation && !(tyre.FlotationDiameterIn >= rim + 3))
        {
            return "The outer diameter must be at least 3 in more than the rim's.";
        }

        cursor.SkipGaps();
        bool lightTruck = tyre.IsFlotation && cursor.TakeWhole("LT");
        bool commercial = !tyre.IsFlotation && cursor.TakeWhole("C");
        tyre = tyre with
        {
            LightTruckSuffix = lightTruck,
            Commercial = commercial,
            LoadClass = tyre.Prefix == TyrePrefix.HL ? TyreLoadClass.HighLoad : TyreLoadClass.Standard,
        };
        return null;
    }

    private static string? TakeMarks(ref TextCursor cursor, ref TyreDesignation tyre)
    {
        for (int i = 0; i < MostMarks; i++)
        {
            cursor.SkipGaps();
            if (cursor.AtEnd)
            {
                return null;
            }

            if (TakeMark(ref cursor, ref tyre) is { } cure)
            {
                return cure;
            }
        }

        return "There are more marks than a tyre has: keep size, load index, speed symbol and XL.";
    }

    private static string? TakeMark(ref TextCursor cursor, ref TyreDesignation tyre)
    {
        if (cursor.AtDigit || cursor.Next == '(')
        {
            return TakeService(ref cursor, ref tyre);
        }

        if (cursor.Next == '/' || cursor.Take("LOAD RANGE") || cursor.Take("LR"))
        {
            return TakeLoadRange(ref cursor, ref tyre);
        }

        if (cursor.TakeWhole("XL") || cursor.TakeWhole("EXTRA LOAD") || cursor.TakeWhole("REINFORCED") || cursor.TakeWhole("REINF"))
        {
            bool again = tyre.LoadClass != TyreLoadClass.Standard;
            tyre = tyre with { LoadClass = TyreLoadClass.ExtraLoad };
            return again ? "XL or HL is marked twice: keep one." : null;
        }

        if (cursor.TakeWhole("M+S") || cursor.TakeWhole("M&S"))
        {
            bool again = tyre.MudAndSnow;
            tyre = tyre with { MudAndSnow = true };
            return again ? "M+S is marked twice: keep one." : null;
        }

        return $"\"{cursor.Word()}\" is not a mark known here. Known: load index with speed symbol (91V), load range (/E), XL, REINF, M+S.";
    }

    private static string? TakeLoadRange(ref TextCursor cursor, ref TyreDesignation tyre)
    {
        cursor.Take("/");
        cursor.SkipGaps();
        char letter = char.ToUpperInvariant(cursor.Next);
        cursor.At += cursor.AtEnd ? 0 : 1;
        if (!LoadRanges.Contains(letter, StringComparison.Ordinal) || cursor.AtLetter || cursor.AtDigit)
        {
            return "A load range is one letter, B to N: LT245/75R16/E.";
        }

        bool again = tyre.LoadRange is not null;
        tyre = tyre with { LoadRange = letter };
        return again ? "The load range is given twice: keep one." : null;
    }

    private static string? TakeService(ref TextCursor cursor, ref TyreDesignation tyre)
    {
        const string Form = "Load index and speed symbol are written like 91V, 120/116Q or (94Y).";
        bool open = cursor.Take("(");
        cursor.SkipGaps();
        if (!cursor.TakeInteger(out int index))
        {
            return Form;
        }

        cursor.SkipGaps();
        int? dual = null;
        if (cursor.Take("/"))
        {
            cursor.SkipGaps();
            if (!cursor.TakeInteger(out int second))
            {
                return Form;
            }

            dual = second;
            cursor.SkipGaps();
        }

        bool inner = !open && cursor.Take("(");
        cursor.SkipGaps();
        string? symbol = TakeSpeedSymbol(ref cursor);
        bool closed = true;
        if (open || inner)
        {
            cursor.SkipGaps();
            closed = cursor.Take(")") && !cursor.AtLetter && !cursor.AtDigit;
        }

        if (symbol is null || !closed)
        {
            return symbol is null ? $"A speed symbol must follow the load index. {Form}" : Form;
        }

        if (!LoadIndex.Exists(index) || (dual is { } d && !LoadIndex.Exists(d)))
        {
            return $"A load index runs from {LoadIndex.Least} to {LoadIndex.Greatest}.";
        }

        if ((open || inner) && symbol != "Y")
        {
            return "Only Y stands in brackets, (94Y): for more than 300 km/h.";
        }

        bool again = tyre.Service is not null;
        tyre = tyre with { Service = new ServiceDescription(index, dual, symbol, open || inner) };
        return again ? "Load index and speed symbol are given twice: keep one pair." : null;
    }

    private static string? TakeSpeedSymbol(ref TextCursor cursor)
    {
        foreach (string symbol in SpeedSymbols)
        {
            if (cursor.TakeWhole(symbol))
            {
                return symbol;
            }
        }

        return null;
    }

    private static bool Hundredths(double value) => Math.Abs((value * 100) - Math.Round(value * 100)) < 1e-6;
}
