using System.Globalization;
using Cornerwright.Garage.Quantities;

namespace Cornerwright.Workshop.Checks;

/// <summary>What is fixed about one kind of check, whoever asks it: the judge, the quick judge of a search, a whole car.</summary>
/// <param name="Id">In files and scripts; with a part's id behind it where each part has a check of its own.</param>
/// <param name="Title">For people; {0} stands for the part.</param>
/// <param name="General">The title where no part is named.</param>
/// <param name="Scope">What of a build has a part in it.</param>
/// <param name="Unit">In which it is told.</param>
/// <param name="Decimals">Shown after the point.</param>
internal sealed record CheckKind(string Id, string Title, string General, CheckScope Scope, Unit Unit, int Decimals = 1)
{
    public CheckKind(string id, string title, CheckScope scope, Unit unit, int decimals = 1)
        : this(id, title, title, scope, unit, decimals)
    {
    }

    /// <param name="part">Its id; empty where the check is of no part.</param>
    public string IdOf(string part) => part.Length == 0 ? Id : Id + "-" + part;

    /// <param name="part">Its name.</param>
    public string TitleOf(string part) => string.Format(CultureInfo.InvariantCulture, Title, part);
}
