namespace Cornerwright.Garage.Quantities;

/// <summary>One pass over one typed quantity: sign, number, unit, and for feet and degrees the smaller parts behind.</summary>
internal ref struct QuantityReader(ReadOnlySpan<char> text, Dimension expected, Unit? defaultUnit)
{
    private const int MostParts = 3;

    private readonly ReadOnlySpan<char> _all = text;
    private ReadOnlySpan<char> _text;
    private int _at;
    private Trouble _trouble;
    private NumberFault _fault;
    private ReadOnlySpan<char> _culprit;

    private enum Trouble
    {
        None, Empty, TooLong, PlusMinus, Number, Gap, NoUnit, UnknownUnit, OtherDimension, PartsOrder, PartTooLarge, PartNotWhole,
    }

    /// <summary>In <see cref="Unit"/>; meaningful after <see cref="Read"/> said true.</summary>
    public double Number { get; private set; }

    public Unit? Unit { get; private set; }

    public bool UnitAssumed { get; private set; }

    public bool Read()
    {
        _text = Characters.TrimTyped(_all);
        if (_text.IsEmpty || _all.Length > Characters.TextLimit)
        {
            return Fail(_text.IsEmpty ? Trouble.Empty : Trouble.TooLong, default);
        }

        if (_text.Contains('±') || _text.Contains("+/", StringComparison.Ordinal))
        {
            return Fail(Trouble.PlusMinus, default);
        }

        bool negative = Characters.IsMinus(_text[0]);
        if (negative || _text[0] == '+')
        {
            _at = 1;
            Characters.SkipGaps(_text, ref _at);
        }

        if (!ReadParts())
        {
            return false;
        }

        Number = negative && Number != 0 ? -Number : Number;
        return true;
    }

    private bool ReadParts()
    {
        Unit? previous = null;
        double share = 1;
        bool previousWhole = true;
        for (int part = 0; part < MostParts; part++)
        {
            if (!ReadPart(out double number, out bool whole, out Unit? unit))
            {
                return false;
            }

            if (previous is null)
            {
                (Number, Unit) = (number, unit);
            }
            else
            {
                double inPrevious = Step(previous, unit!);
                Trouble wrong = inPrevious == 0 ? Trouble.PartsOrder
                    : !previousWhole ? Trouble.PartNotWhole
                    : number < inPrevious ? Trouble.None
                    : Trouble.PartTooLarge;
                if (wrong != Trouble.None)
                {
                    return Fail(wrong, default);
                }

                share *= inPrevious;
                Number += number / share;
            }

            if (_at == _text.Length)
            {
                return true;
            }

            (previous, previousWhole) = (unit, whole);
        }

        return Fail(Trouble.PartsOrder, default);
    }

    private bool ReadPart(out double number, out bool whole, out Unit? unit)
    {
        unit = null;
        int start = _at;
        _fault = NumberScanner.Scan(_text, ref _at, fractions: true, out number, out whole);
        if (_fault != NumberFault.None)
        {
            return Fail(Trouble.Number, RunAt(start));
        }

        Characters.SkipGaps(_text, ref _at);
        ReadOnlySpan<char> typed = UnitText();
        if (typed.IsEmpty && _at < _text.Length)
        {
            return Fail(Trouble.Gap, default);
        }

        if (typed.IsEmpty && start == FirstDigit() && defaultUnit is not null)
        {
            (unit, UnitAssumed) = (defaultUnit, true);
            return true;
        }

        Span<char> room = stackalloc char[UnitFolding.Limit];
        if (!UnitFolding.TryFold(typed, room, out int length))
        {
            return Fail(Trouble.UnknownUnit, typed);
        }

        unit = Units.FindFolded(room[..length], expected);
        return unit is not null || Fail(typed.IsEmpty ? Trouble.NoUnit : OtherUnit(room[..length]), typed);
    }

    /// <summary>The unit's characters; for lengths and angles they end where the next, smaller part begins.</summary>
    private ReadOnlySpan<char> UnitText()
    {
        int start = _at;
        if (expected is not (Dimension.Length or Dimension.Angle))
        {
            if (IsNumber(start) && !StartsOneOver(start))
            {
                return [];
            }

            _at = _text.Length;
            return _text[start..];
        }

        if (start < _text.Length && _text[start] is '\'' or '"' or '°' or 'º' or '\u2032' or '\u2033' or '\u2019' or '\u201D')
        {
            bool twice = _text[start] == '\'' && start + 1 < _text.Length && _text[start + 1] == '\'';
            _at += twice ? 2 : 1;
            ReadOnlySpan<char> quote = _text[start.._at];
            Characters.SkipGaps(_text, ref _at);
            bool joined = _at + 1 < _text.Length && _text[_at] == '-' && char.IsAsciiDigit(_text[_at + 1])
                && quote is "'" or "\u2032" or "\u2019";
            _at += joined ? 1 : 0;
            return quote;
        }

        while (_at < _text.Length && !IsNumber(_at))
        {
            _at++;
        }

        return _text[start.._at];
    }

    private readonly bool StartsOneOver(int at) =>
        at + 2 < _text.Length && _text[at] == '1' && _text[at + 1] == '/' && char.IsAsciiLetter(_text[at + 2]);

    private readonly bool IsNumber(int at) =>
        at < _text.Length && (char.IsAsciiDigit(_text[at]) || Characters.FractionSign(_text[at]) > 0
            || (_text[at] is '.' or ',' && at + 1 < _text.Length && char.IsAsciiDigit(_text[at + 1])));

    private readonly int FirstDigit()
    {
        int at = 0;
        if (_text[0] == '+' || Characters.IsMinus(_text[0]))
        {
            at = 1;
            Characters.SkipGaps(_text, ref at);
        }

        return at;
    }

    /// <summary>How many of the smaller make one of the larger, or 0 if they do not follow each other.</summary>
    private static double Step(Unit larger, Unit smaller) =>
        ReferenceEquals(larger, Units.Foot) && ReferenceEquals(smaller, Units.Inch) ? 12
        : ReferenceEquals(larger, Units.Degree) && ReferenceEquals(smaller, Units.ArcMinute) ? 60
        : ReferenceEquals(larger, Units.ArcMinute) && ReferenceEquals(smaller, Units.ArcSecond) ? 60
        : 0;

    private static Trouble OtherUnit(ReadOnlySpan<char> folded) =>
        Units.FindAnywhere(folded) is null ? Trouble.UnknownUnit : Trouble.OtherDimension;

    private readonly ReadOnlySpan<char> RunAt(int start)
    {
        int end = start;
        while (end < _text.Length && (char.IsAsciiDigit(_text[end]) || _text[end] is '.' or ',' or '/'))
        {
            end++;
        }

        return _text[start..end];
    }

    private bool Fail(Trouble trouble, ReadOnlySpan<char> culprit)
    {
        _trouble = trouble;
        _culprit = culprit;
        return false;
    }

    /// <summary>What a field of a dimension takes.</summary>
    public static string Allowed(Dimension expected)
    {
        string units = string.Join(", ", Units.Of(expected).Select(u => u.Symbol.Length == 0 ? "no unit" : u.Symbol));
        string what = expected switch
        {
            Dimension.Length => "a length, e.g. 187.5 mm, 7 3/4 in or 5' 3\"",
            Dimension.SpringRate => "a spring rate, e.g. 80 N/mm, 8 kgf/mm or 450 lbf/in",
            Dimension.Force => "a force, e.g. 350 N",
            Dimension.Mass => "a mass, e.g. 22.5 kg",
            Dimension.Angle => "an angle, e.g. -1.5° or 1°30'",
            Dimension.Torque => "a torque, e.g. 34 N·m or 25 lbf·ft",
            Dimension.Pressure => "a pressure, e.g. 2.2 bar",
            Dimension.Speed => "a speed, e.g. 130 km/h",
            Dimension.Ratio => "a plain number or a percentage, e.g. 0.95 or 95 %",
            Dimension.Turns => "a number of turns, e.g. 1 1/2 turns",
            Dimension.Count => "a plain number",
            Dimension.AnglePerLength => "an angle per length, e.g. 0.02 deg/mm",
            Dimension.InverseLength => "a change per length, e.g. 0.001 1/mm",
            Dimension.Frequency => "a frequency, e.g. 1.6 Hz",
            Dimension.DampingRate => "a damping rate, e.g. 3500 N·s/m",
            Dimension.Stress => "a stress, e.g. 900 MPa",
            _ => "a torque per angle, e.g. 300 N·m/°",
        };
        return $"{what}; units: {units}";
    }

    public readonly string Explanation() => _trouble switch
    {
        Trouble.Empty => "Type a value.",
        Trouble.TooLong => $"Type at most {Characters.TextLimit} characters.",
        Trouble.PlusMinus => "A ± belongs in the tolerance; type the value alone here, and how far it may be off in the tolerance.",
        Trouble.Gap => "There is a gap inside the number: write 1234.5 without gaps, or a fraction such as 7 3/4.",
        Trouble.NoUnit => "Add the unit behind the number.",
        Trouble.UnknownUnit when !_culprit.IsEmpty && Characters.IsMinus(_culprit[0]) =>
            "Only one number belongs here: nothing is worked out.",
        Trouble.UnknownUnit => $"\"{_culprit}\" is not a unit known here: use one of those listed.",
        Trouble.OtherDimension => $"\"{_culprit}\" measures something else: use one of the units listed.",
        Trouble.PartsOrder => "Only feet with inches, and degrees with minutes and seconds, may follow each other, the larger first; ' "
            + "never marks thousands.",
        Trouble.PartTooLarge => "The smaller part is too large: inches stay below 12, minutes and seconds below 60.",
        Trouble.PartNotWhole => "When a smaller part follows, the larger one must be a whole number.",
        Trouble.Number => Explain(_fault, _culprit),
        _ => "Type a number with its unit.",
    };

    internal static string Explain(NumberFault fault, ReadOnlySpan<char> run) => fault switch
    {
        NumberFault.AmbiguousComma =>
            $"\"{run}\" could be {WithoutComma(run)} or {WithPoint(run)}: write {WithoutComma(run)} or {WithPoint(run)} (a point always "
                + $"marks decimals here).",
        NumberFault.RepeatedSeparator =>
            $"\"{run}\" has the same mark more than once: write it with one decimal point and nothing between the thousands.",
        NumberFault.BadGrouping => $"The points and commas of \"{run}\" do not stand where thousands end: write one decimal point only.",
        NumberFault.NoDigitAfterSeparator => $"A digit must follow the decimal mark of \"{run}\".",
        NumberFault.NoDigitBeforeComma => $"Write a digit before the comma: 0{run}.",
        NumberFault.Exponent => "Powers of ten (1e3) are not taken: write the number out, 1000.",
        NumberFault.BadFraction => "The fraction cannot be read: write it like 3/8 or 7 3/4, with at most four digits each, the top "
            + "smaller than the bottom behind a whole number.",
        NumberFault.OutOfScale => "The number is too large or too small to be a reading: check it.",
        _ => "A number is expected here.",
    };

    private static string WithoutComma(ReadOnlySpan<char> run) => run.ToString().Replace(",", "", StringComparison.Ordinal);

    private static string WithPoint(ReadOnlySpan<char> run) => run.ToString().Replace(',', '.');
}
