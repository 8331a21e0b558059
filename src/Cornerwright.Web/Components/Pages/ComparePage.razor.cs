using System.Globalization;
using Cornerwright.Garage.Builds;
using Cornerwright.Workshop.Comparing;
using Cornerwright.Workshop.Findings;
using Microsoft.AspNetCore.Components;

namespace Cornerwright.Web.Components.Pages;

/// <summary>Two builds of one car, check beside check, with what differs and what each costs.</summary>
public sealed partial class ComparePage
{
    [SupplyParameterFromQuery(Name = "left")] public string? Left { get; set; }
    [SupplyParameterFromQuery(Name = "right")] public string? Right { get; set; }

    /// <summary>"all" to read also what holds in both.</summary>
    [SupplyParameterFromQuery(Name = "show")] public string? Show { get; set; }

    /// <summary>The build asked for, else the one on the car, else the first.</summary>
    private string LeftId => Known(Left) ?? Known(Car.MeasuredBuild) ?? Car.Builds.FirstOrDefault()?.Id ?? "";

    private string RightId => Known(Right) ?? Car.Builds.FirstOrDefault(b => b.Id != LeftId)?.Id ?? LeftId;

    private BuildComparison? Both { get; set; }

    private IReadOnlyList<PairRow> Pairs =>
        PairRow.Of((Both?.Findings ?? []).Where(p =>
            Show == "all" || p.Left?.Verdict != Verdict.Holds || p.Right?.Verdict != Verdict.Holds));

    protected override void OnCarReady() => Look();

    protected override void OnBenchDrawn() => Look();

    private void Look()
    {
        if (Ready && Bench.JudgementOf(LeftId) is { } left && Bench.JudgementOf(RightId) is { } right
            && (!ReferenceEquals(Both?.Left, left) || !ReferenceEquals(Both?.Right, right)))
        {
            Both = BuildComparison.Between(left, right);
        }
    }

    private string? Known(string? id) => id is not null && Car.Builds.Any(b => b.Id == id) ? id : null;

    private void Go(string side, ChangeEventArgs e) => Go(side, e.Value?.ToString());

    private void Go(string name, string? value)
    {
        Both = null;
        Navigation.NavigateTo(Navigation.GetUriWithQueryParameter(name, value), replace: true);
    }

    private void Swap() => Navigation.NavigateTo(Addresses.Compare(Id, RightId, LeftId), replace: true);

    private void ToggleAll() =>
        Navigation.NavigateTo(Navigation.GetUriWithQueryParameter("show", Show == "all" ? null : "all"), replace: true);

    private string Money(decimal amount) =>
        (amount.ToString("#,0.##", CultureInfo.InvariantCulture).Replace(',', ' ') + " " + Car.Currency).TrimEnd();

    private static string Or(string text) => text.Length > 0 ? text : "none";

    private static string Gain(FindingPair pair)
    {
        string chance = pair.ProbabilityGain is { } p && Math.Abs(p) >= 0.005
            ? $", {(p > 0 ? "+" : "−")}{Math.Abs(p * 100).ToString("F0", CultureInfo.InvariantCulture)} % points"
            : "";
        return pair.MarginGain is not { } gain ? "–"
            : gain.Number.Trim('0', '.', '-').Length == 0 ? "same" + chance
            : (gain.Si > 0 ? "+" : "") + gain.Text + chance;
    }
}
