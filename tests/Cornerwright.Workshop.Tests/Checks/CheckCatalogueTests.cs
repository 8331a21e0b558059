using Cornerwright.Garage.Files;
using System.Reflection;
using Cornerwright.Workshop.Checks;
using Cornerwright.Workshop.Judging;
using Cornerwright.Workshop.Ranking;

namespace Cornerwright.Workshop.Tests.Checks;

/// <summary>Judge, whole-car checks and the quick judge of a search speak of the same checks: those of the catalogue.</summary>
public class CheckCatalogueTests
{
    [Fact]
    public void Every_kind_stands_in_the_list_once_and_has_an_id_of_its_own()
    {
        var kinds = typeof(CheckCatalogue).GetProperties(BindingFlags.Public | BindingFlags.Static)
            .Where(p => p.PropertyType == typeof(CheckKind)).Select(p => (CheckKind)p.GetValue(null)!).ToList();
        Assert.True(kinds.Count > 40, $"{kinds.Count} kinds");
        Assert.Equal(kinds.Select(k => k.Id).Order(StringComparer.Ordinal),
            CheckCatalogue.All.Select(k => k.Id).Order(StringComparer.Ordinal));
        Assert.Equal(kinds.Count, kinds.Select(k => k.Id).Distinct(StringComparer.Ordinal).Count());
        Assert.All(kinds, k => Assert.DoesNotContain("{0}", k.General, StringComparison.Ordinal));
    }

    [Fact]
    public void Whatever_the_judge_says_of_the_demo_is_of_a_kind_of_the_catalogue()
    {
        var car = DemoCar.Read();
        foreach (var build in car.Builds)
        {
            foreach (var finding in Judge.Build(car, build, JudgeOptions.FindingsOnly).Findings)
            {
                Assert.Contains(CheckCatalogue.All, k =>
                    finding.Check == k.Id || finding.Check.StartsWith(k.Id + "-", StringComparison.Ordinal));
            }
        }
    }

    [Fact]
    public void The_quick_judge_measures_in_the_units_of_the_judge()
    {
        foreach (var check in Enum.GetValues<StaticCheck>())
        {
            Assert.Equal(StaticChecks.KindOf(check).Unit, StaticChecks.UnitOf(check));
            Assert.NotEmpty(StaticChecks.Title(check));
        }
    }
}
