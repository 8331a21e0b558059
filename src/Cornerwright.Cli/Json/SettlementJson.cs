using System.Text.Json;
using Cornerwright.Workshop.Settling;

namespace Cornerwright.Cli.Json;

/// <summary>What would settle a finding, for scripts.</summary>
internal static class SettlementJson
{
    public static void Fields(Utf8JsonWriter writer, Settlement s)
    {
        writer.WriteString("key", s.Finding.Key);
        writer.WriteString("sentence", s.Sentence);
        writer.Number("doubt", Math.Round(s.Doubt, 6));
        writer.Number("doubtThen", Math.Round(s.DoubtThen, 6));
        writer.WriteBoolean("settles", s.Settles);
        writer.Number("sampledProbability", s.Sampled is { } p ? Math.Round(p, 4) : null);
        writer.Objects("readings", s.Readings, r =>
        {
            writer.WriteString("path", r.Path);
            writer.WriteString("label", r.Label);
            writer.Number("share", Math.Round(r.Share, 6));
            writer.Number("sampledFirst", r.First is { } f ? Math.Round(f, 4) : null);
            writer.Number("sampledTotal", r.Total is { } t ? Math.Round(t, 4) : null);
            writer.WriteString("now", r.Now);
            writer.WriteString("within", r.Within);
            writer.Number("doubtThen", r.DoubtThen is { } d ? Math.Round(d, 6) : null);
        });
        writer.Texts("measure", s.Chosen.Select(c => c.Path));
    }
}
