using Cornerwright.Garage.Parts;

namespace Cornerwright.Web.Components.Measures;

[SketchesOf(typeof(WheelBolt))]
internal static class WheelBoltSketches
{
    /// <summary>A bolt with a tapered seat; its thread points to the right.</summary>
    public static Sketch Length { get; } = new("BoltLength", pen => pen
        .Solid("M14 34h22v44H14z").Solid("M36 30h10l14 13v26L46 82H36z").Solid("M60 43h82v26H60z")
        .Thin("M84 43l5 26M94 43l5 26M104 43l5 26M114 43l5 26M124 43l5 26M134 43l5 26")
        .Dashed("M53 26v74M142 40v60").Dim(53, 94, 142, 94));

    /// <summary>A nut in section, its seat to the left.</summary>
    public static Sketch ThreadDepth { get; } = new("NutThread", pen => pen
        .Solid("M34 44l16-18h74v22H34z").Solid("M34 68l16 18h74V64H34z").Thin("M34 48h90M34 64h90M8 50h26M8 62h26")
        .Dashed("M34 70v34M124 88v16").Dim(34, 98, 124, 98));
}
