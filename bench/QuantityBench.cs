using BenchmarkDotNet.Attributes;
using Cornerwright.Garage.Quantities;

namespace Cornerwright.Bench;

/// <summary>Reading what people type: one call a field of a form or a car file.</summary>
public class QuantityBench
{
    [Params("187.5 mm", "7 3/4 in", "450 lb/in", "1°30'")]
    public string Typed { get; set; } = "";

    private Dimension _dimension;

    [GlobalSetup]
    public void Setup()
    {
        _dimension = Typed switch { "450 lb/in" => Dimension.SpringRate, "1°30'" => Dimension.Angle, _ => Dimension.Length };
        if (!QuantityText.Parse(Typed, _dimension, "bench").Ok)
        {
            throw new InvalidOperationException($"\"{Typed}\" is not read: the bench would measure refusals.");
        }
    }

    [Benchmark]
    public double Read() => QuantityText.Parse(Typed, _dimension, "bench").Value.Si;
}
