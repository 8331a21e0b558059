using Cornerwright.Garage.Cars;
using Cornerwright.Garage.Chassis;
using Cornerwright.Garage.Fields;
using Cornerwright.Garage.Problems;

namespace Cornerwright.Garage.Files;

/// <summary>What one field of a hardpoint table alone cannot show: whose table it is, and what its kind of linkage can carry.</summary>
public static class HardpointConsistency
{
    internal static void Check(List<Problem> problems, Car car, CornerPlace corner)
    {
        if (car.At(corner).Hardpoints is not { } table)
        {
            return;
        }

        string path = $"{corner.Words()} corner / hardpoints";
        if (table.Mirrored)
        {
            var other = corner.OtherSide();
            if (car.At(other).Hardpoints is null or { Mirrored: true })
            {
                problems.Add(new Problem($"{path} / mirrored from the other wheel", "yes",
                    $"a table of its own at the {other.Words()} corner", $"Write the points down at the {other.Words()} corner, or here."));
            }

            return;
        }

        problems.AddRange(Carriers(table, path));
    }

    /// <summary>Spring, damper, pushrod and rack on parts that this kind of linkage has.</summary>
    public static IEnumerable<Problem> Carriers(HardpointTable table, string path)
    {
        var carriers = HardpointNeeds.Carriers(table.Kind);
        if (!carriers.Contains(table.SpringOn))
        {
            yield return OneOf(path, nameof(HardpointTable.SpringOn), table.SpringOn, carriers, table.Kind);
        }

        if (!carriers.Contains(table.DamperOn))
        {
            yield return OneOf(path, nameof(HardpointTable.DamperOn), table.DamperOn, carriers, table.Kind);
        }

        bool rocker = table.SpringOn == StationCarrier.Rocker || table.DamperOn == StationCarrier.Rocker;
        if (rocker && !HardpointNeeds.PushrodCarriers.Contains(table.PushrodOn))
        {
            yield return OneOf(path, nameof(HardpointTable.PushrodOn), table.PushrodOn, HardpointNeeds.PushrodCarriers, table.Kind);
        }

        if (HardpointNeeds.HasBar(table) && !HardpointNeeds.BarCarriers(table.Kind).Contains(table.BarOn))
        {
            yield return OneOf(path, nameof(HardpointTable.BarOn), table.BarOn, HardpointNeeds.BarCarriers(table.Kind), table.Kind);
        }

        if (table.RackOn != RackRod.TieRod && !HardpointNeeds.OnLinks(table.Kind))
        {
            yield return OneOf(path, nameof(HardpointTable.RackOn), table.RackOn, [RackRod.TieRod], table.Kind);
        }
    }

    private static Problem OneOf<TChoice>(string path, string property, TChoice given, IEnumerable<TChoice> allowed, LinkageKind kind)
        where TChoice : struct, Enum
    {
        var field = RecordShape.Of<HardpointTable>().Fields.First(f => f.PropertyName == property);
        return new Problem(
            $"{path} / {field.Label}", Name(given), string.Join(", ", allowed.Select(Name)),
            $"A linkage of kind {Name(kind)} has no such part: choose one that it has, or another kind.");
    }

    private static string Name<TChoice>(TChoice choice)
        where TChoice : struct, Enum => System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(choice.ToString());
}
