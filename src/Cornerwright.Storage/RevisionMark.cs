using System.Globalization;

namespace Cornerwright.Storage;

/// <summary>Which state of a car somebody has in hand: he may save over it only while it is still the latest.</summary>
/// <param name="Number">Number of the revision, from 1.</param>
/// <param name="Fold">How often autosaves had been folded into it; 0 for one that was saved on purpose.</param>
public readonly record struct RevisionMark(int Number, int Fold)
{
    /// <summary>"12", or "12+3" with folds; for addresses and logs.</summary>
    public override string ToString() =>
        Fold == 0 ? Number.ToString(CultureInfo.InvariantCulture) : FormattableString.Invariant($"{Number}+{Fold}");

    /// <summary>Reads what <see cref="ToString"/> writes; null for anything else.</summary>
    public static RevisionMark? Parse(string? text)
    {
        string[] pieces = (text ?? "").Split('+');
        int fold = 0;
        return pieces.Length <= 2
            && int.TryParse(pieces[0], NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number > 0
            && (pieces.Length == 1 || int.TryParse(pieces[1], NumberStyles.None, CultureInfo.InvariantCulture, out fold))
            ? new RevisionMark(number, fold)
            : null;
    }
}
