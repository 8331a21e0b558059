namespace Cornerwright.Web.Components.Measures;

/// <summary>Sketches of the car and of a wheel on it.</summary>
internal static class CarSketches
{
    /// <returns>False when the sketch is not one of these.</returns>
    public static bool Draw(Pen pen, Sketch sketch, double clock)
    {
        switch (sketch.Name)
        {
            case nameof(Sketch.RideHeight):
                WheelFromSide(pen).Dim(80, 68, 80, 15);
                pen.Circle(80, 68, 2.5, "thick");
                return true;
            case nameof(Sketch.Gap):
                Gap(pen, clock);
                return true;
            case nameof(Sketch.GroundClearance):
                CarFromSide(pen).Dashed("M66 78H94").Dim(80, 78, 80, 96);
                return true;
            case nameof(Sketch.Wheelbase):
                CarFromSide(pen).Dashed("M42 82V106M120 82V106").Dim(42, 104, 120, 104);
                return true;
            case nameof(Sketch.TopSpeed):
                CarFromSide(pen).Dim(40, 22, 132, 22);
                return true;
            case nameof(Sketch.Track):
                pen.Thin("M40 40H120M52 40V26H108V40").Solid("M22 30h22v66H22zM116 30h22v66h-22z").Thin("M6 96H154")
                .Dashed("M33 22V108M127 22V108").Dim(33, 105, 127, 105);
                return true;
            case nameof(Sketch.LoadFrontLeft):
                return Load(pen, 42, 10);
            case nameof(Sketch.LoadFrontRight):
                return Load(pen, 98, 10);
            case nameof(Sketch.LoadRearLeft):
                return Load(pen, 42, 70);
            case nameof(Sketch.LoadRearRight):
                return Load(pen, 98, 70);
            case nameof(Sketch.UnsprungMass):
                pen.Circle(62, 56, 40, "thick").Circle(62, 56, 24).Circle(62, 56, 8).Thin("M62 56 120 48M62 64 120 76")
                .Solid("M118 44h10v38h-10z").Dim(62, 56, 62, 104);
                return true;
            case nameof(Sketch.Camber):
                pen.Thin("M10 104H150").Dashed("M78 104V6").Solid("M48 12 78 6l18 92-30 6z").Tool("M100 94 82 4")
                .Arc(80, 104, 88, -90, -101);
                return true;
            case nameof(Sketch.Toe):
                pen.Thin("M20 56h120").Dashed("M34 104V6").Solid("M20 12 46 8l8 88-26 4z").Solid("M114 8 140 12l-8 88-26-4z")
                .Tool("M47 8 55 98M113 8 105 98").Dim(48, 12, 112, 12).Dim(55, 94, 105, 94);
                return true;
            default:
                return Travel(pen, sketch) || Hub(pen, sketch);
        }
    }

    /// <summary>What a wheel does in its arch, and what the calliper does inside it.</summary>
    private static bool Travel(Pen pen, Sketch sketch)
    {
        switch (sketch.Name)
        {
            case nameof(Sketch.TravelOfWheel):
                WheelFromSide(pen);
                pen.Dashed("M6 68h100").Circle(80, 48, 40, "dashed").Dim(126, 68, 126, 48);
                pen.Dashed("M80 48h54M80 68h54");
                return true;
            case nameof(Sketch.DroopHeld):
                WheelFromSide(pen);
                pen.Circle(80, 84, 25, "dashed").Dashed("M80 68h54M80 88h54").Dim(126, 68, 126, 88);
                return true;
            case nameof(Sketch.MetalMeets):
                pen.Solid("M8 20h60v16H40l-6 12H8z").Thin("M24 86 112 70").Solid("M112 40h20v56h-20z").Circle(24, 86, 4, "thick")
                .Circle(112, 70, 4, "thick").Dim(54, 37, 54, 80);
                return true;
            case nameof(Sketch.CamberGain):
                pen.Thin("M10 104H150").Dashed("M60 104V6").Thin("M46 34h26v66H46z").Solid("M52 12 76 8l6 68-24 4z").Dim(110, 88, 110, 64)
                .Arc(64, 76, 66, -90, -83);
                return true;
            case nameof(Sketch.Sideways):
                pen.Thin("M36 34h30v70H36z").Dashed("M66 104V4M52 104V4").Solid("M22 10h30v70H22z").Dim(66, 22, 52, 22)
                .Dim(110, 88, 110, 64);
                return true;
            case nameof(Sketch.Lock):
                pen.Thin("M80 8v96").Dashed("M80 4v104").Solid("M70 20h20v72H70z").Thin("M98 10 118 17 92 87 72 80z")
                .Arc(80, 56, 46, -90, -70);
                return true;
            case nameof(Sketch.CalliperRadius):
                pen.Circle(80, 56, 46).Circle(80, 56, 32, "thick").Circle(80, 56, 5, "thick")
                .Solid("M94 24a36 36 0 0 1 21 25l-12 4a24 24 0 0 0-14-18z").Dim(80, 56, 112, 34);
                return true;
            case nameof(Sketch.CalliperProud):
                pen.Solid("M30 34h36v12h24V34h12v44H90V66H66v12H30z").Dashed("M66 4v104M102 4v104").Thick("M66 22v68").Dim(66, 14, 102, 14)
                .Tool("M104 30v52");
                return true;
            default:
                return false;
        }
    }

    private static bool Hub(Pen pen, Sketch sketch)
    {
        switch (sketch.Name)
        {
            case nameof(Sketch.BoltCircle):
                HubFace(pen).Circle(80, 56, 30, "dashed").Dim(80, 26, 80, 86);
                return true;
            case nameof(Sketch.Centring):
                HubFace(pen).Dim(64, 56, 96, 56);
                return true;
            case nameof(Sketch.ThreadDiameter):
                Bolt(pen).Dim(140, 42, 140, 70).Dashed("M104 42h42M104 70h42");
                return true;
            case nameof(Sketch.ThreadPitch):
                Bolt(pen).Dashed("M76 30v20M87 30v20").Dim(76, 30, 87, 30);
                return true;
            case nameof(Sketch.Engagement):
                pen.Solid("M66 12h36v88H66z").Thin("M44 12h22v88H44z").Solid("M22 34h18v44H22zM40 46h56v20H40z")
                .Dashed("M66 66v36M96 66v36").Dim(66, 94, 96, 94);
                return true;
            default:
                return false;
        }
    }

    private static Pen HubFace(Pen pen) => pen.Circle(80, 56, 46, "thick").Circle(80, 56, 16, "thick")
        .Circle(80, 26, 5, "solid").Circle(110, 56, 5, "solid").Circle(80, 86, 5, "solid").Circle(50, 56, 5, "solid");

    private static Pen Bolt(Pen pen) => pen.Solid("M24 34h26v44H24z").Solid("M50 42h80l8 4v20l-8 4H50z")
        .Thin("M65 42v28M76 42v28M87 42v28M98 42v28M109 42v28M120 42v28");

    /// <summary>Wheel centre at (80, 68), tyre radius 40; the arch edge stands 53 above the centre.</summary>
    private static Pen WheelFromSide(Pen pen) =>
        pen.Thin("M4 30H22C30 22 50 15 80 15S130 22 138 30H156").Thin("M22 30C24 62 26 72 26 80M138 30C136 62 134 72 134 80")
        .Circle(80, 68, 40, "thick").Circle(80, 68, 25).Circle(80, 68, 7).Thin("M4 109H156");

    private static Pen CarFromSide(Pen pen) => pen.Thin("M12 78V62c0-5 4-8 10-9l20-3 18-18h40l22 20 20 4c6 1 8 4 8 9v13")
        .Thin("M12 78h14M58 78h46M136 78h14").Circle(42, 82, 14, "thick").Circle(120, 82, 14, "thick").Circle(42, 82, 3).Circle(120, 82, 3)
        .Thin("M4 96H156");

    /// <summary>The car from above, nose up, with a scale pad under one wheel: the arrow is the weight it shows.</summary>
    private static bool Load(Pen pen, double x, double y)
    {
        pen.Thin("M66 4h28c5 0 8 4 8 9v86c0 5-3 9-8 9H66c-5 0-8-4-8-9V13c0-5 3-9 8-9Z").Thin("M64 30c10-5 22-5 32 0M64 78c10 4 22 4 32 0")
            .Thin("M44 14h16v26H44zM100 14h16v26h-16zM44 74h16v26H44zM100 74h16v26h-16z");
        double outside = x < 80 ? x - 26 : x + 46;
        pen.Solid(FormattableString.Invariant($"M{x - 4} {y}h28v34h-28z")).Thin(FormattableString.Invariant($"M{x + 2} {y + 4}h16v26h-16z"))
            .Dim(outside, y + 2, outside, y + 32);
        return true;
    }

    /// <summary>Clock positions as seen from the street; 12 is up.</summary>
    private static void Gap(Pen pen, double clock)
    {
        double angle = ((double.IsFinite(clock) ? clock : 12) % 12 / 12 * 2 * Math.PI) - (Math.PI / 2);
        double ux = Math.Cos(angle), uy = Math.Sin(angle);
        pen.Circle(80, 60, 30, "thick").Circle(80, 60, 18).Circle(80, 60, 45, "dashed");
        pen.Text(80, 56, "12").Text(94, 64, "3").Text(80, 75, "6").Text(66, 64, "9");
        pen.Dim(80 + (30 * ux), 60 + (30 * uy), 80 + (45 * ux), 60 + (45 * uy));
    }
}
