using System.Globalization;

namespace Cornerwright.Web.Components.Ranking;

/// <summary>Sums as people read them.</summary>
internal static class Money
{
    public static string Of(decimal amount, string currency) =>
        (amount.ToString("#,0.##", CultureInfo.InvariantCulture).Replace(',', ' ') + " " + currency).TrimEnd();
}
