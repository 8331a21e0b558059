using Cornerwright.Garage.Quantities;
using Cornerwright.Mechanics.Bolts;

namespace Cornerwright.Garage.Access;

/// <summary>Whether a torque can be right for its thread and class. The maker's figure comes first; this only asks to look again.</summary>
public static class TorqueSense
{
    /// <summary>"28 N·m (21 lbf·ft), then 90° further", or "maker's figure".</summary>
    public static string Words(Fastener fastener)
    {
        ArgumentNullException.ThrowIfNull(fastener);
        string turn = fastener.ThenTurn is { } angle ? ", then " + QuantityText.Write(angle.Si, Units.Degree, 0) + " further" : "";
        return (fastener.Torque is { } torque ? QuantityText.WriteTorqueBothWays(torque.Si) : "maker's figure") + turn;
    }

    /// <summary>What is odd about the torque, in words; empty if nothing is, or nothing can be said.</summary>
    public static string Warning(Fastener fastener)
    {
        ArgumentNullException.ThrowIfNull(fastener);
        if (fastener.Torque is not { } torque || fastener.Thread.Length == 0 || fastener.Class.Length == 0
            || !ThreadDesignation.Parse(fastener.Thread, "thread").Try(out var thread)
            || TorqueBand.Of(thread, fastener.Class.Trim()) is not { } band)
        {
            return "";
        }

        string usual = QuantityText.WriteTorqueBothWays(band.Usual), what = $"{fastener.Thread} of class {fastener.Class}";
        return torque.Si > band.Most
            ? $"{fastener.Name}: {QuantityText.WriteTorqueBothWays(torque.Si)} would stretch {what} beyond its yield (usual {usual}). "
            + $"Look it up again before you pull."
            : torque.Si < band.Least && fastener.ThenTurn is null
                ? $"{fastener.Name}: {QuantityText.WriteTorqueBothWays(torque.Si)} hardly stretches {what} (usual {usual}). Is the figure "
                + $"for another bolt, or in another unit?"
                : "";
    }
}
