namespace Cornerwright.Web.Components.Measures;

/// <summary>Sketches of the spring-and-damper station and of what stands beside the wheel.</summary>
internal static class StrutSketches
{
    private const double Mount = 12, Shoulder = 20, Seat = 27, BodyTop = 58, Perch = 72, Lower = 100;

    /// <returns>False when the sketch is not one of these.</returns>
    public static bool Draw(Pen pen, Sketch sketch)
    {
        switch (sketch.Name)
        {
            case nameof(Sketch.SpringAxisLength):
                Across(Station(pen), Mount, Lower);
                return true;
            case nameof(Sketch.PerchHeight):
                Across(Station(pen), Perch, Lower);
                return true;
            case nameof(Sketch.ThreadLow):
                Across(Station(pen, 88), 88, Lower);
                return true;
            case nameof(Sketch.ThreadHigh):
                Across(Station(pen, 62), 62, Lower);
                return true;
            case nameof(Sketch.BodyHeight):
                Across(Station(pen), BodyTop, Lower);
                return true;
            case nameof(Sketch.SeatDrop):
                Across(Station(pen), Mount, Seat);
                return true;
            case nameof(Sketch.RodDrop):
                Across(Station(pen), Mount, Shoulder);
                return true;
            case nameof(Sketch.DamperAxisLength):
                pen.Thick("M20 12h120").Coils(48, 18, 84, 16, 5, "thin").Thin("M30 84h36");
                Damper(pen, 104, 18, 56, Lower).Dashed("M104 12h40M104 100h40").Dim(140, Mount, 140, Lower);
                return true;
            case nameof(Sketch.RodOut):
                Damper(pen, 70, 10, 54, 104).Dashed("M70 14h50M70 54h50").Dim(114, 14, 114, 54);
                return true;
            case nameof(Sketch.RodIn):
                Damper(pen, 70, 30, 54, 104).Dashed("M70 34h50M70 54h50").Dim(114, 34, 114, 54);
                return true;
            case nameof(Sketch.RodForce):
                Damper(pen, 80, 34, 60, 108).Dim(80, 6, 80, 30);
                return true;
            case nameof(Sketch.RodSpeed):
                Damper(pen, 80, 26, 60, 108).Dim(112, 52, 112, 16);
                return true;
            case nameof(Sketch.TubeDiameter):
                pen.Thick("M56 4v104M104 4v104").Thin("M76 4h8").Dashed("M80 2v108").Dim(56, 56, 104, 56).Tool("M54 44v24M106 44v24");
                return true;
            case nameof(Sketch.Slide):
                pen.Solid("M12 22h136v14H12z").Thin("M50 26h60v6H50z").Circle(92, 29, 8, "solid").Circle(80, 29, 8, "dashed")
                .Dashed("M80 36v60M92 36v60").Thin("M92 37 78 108").Dim(80, 84, 92, 84);
                return true;
            case nameof(Sketch.Packer):
                pen.Thick("M30 14h100").Thin("M77 14v92M83 14v92").Solid("M64 14h32v14H64z")
                .Solid("M60 28h40l-4 10 4 10-6 14H66l-6-14 4-10z").Dashed("M96 14h40M96 28h40").Dim(128, 14, 128, 28);
                return true;
            case nameof(Sketch.MotionRatio):
                pen.Solid("M8 34h24v64H8z").Thin("M32 70 132 84").Circle(132, 84, 4, "thick").Coils(88, 16, 72, 10, 5).Thick("M72 14h32")
                .Dim(44, 98, 44, 74).Dim(110, 76, 110, 60);
                return true;
            case nameof(Sketch.RatioChange):
                pen.Thin("M24 8v88h124").Thick("M28 78C60 70 100 54 144 26").Dashed("M28 78 144 50").Dim(138, 52, 138, 31);
                return true;
            default:
                return Beside(pen, sketch);
        }
    }

    private static bool Beside(Pen pen, Sketch sketch)
    {
        switch (sketch.Name)
        {
            case nameof(Sketch.TyreToTube):
                WheelAndStrut(pen).Dim(70, 22, 99, 22);
                return true;
            case nameof(Sketch.LowerReference):
                WheelAndStrut(pen).Dashed("M62 56h82M102 84h42").Dim(138, 56, 138, 84);
                return true;
            case nameof(Sketch.StrutLean):
                WheelAndStrut(pen).Dashed("M106 104V2").Tool("M106 98 122 2").Arc(106, 98, 84, -90, -80);
                return true;
            case nameof(Sketch.HubOffset):
                WheelAndStrut(pen).Dashed("M86 108 122 2M70 60v44").Dim(70, 56, 103, 56);
                return true;
            case nameof(Sketch.Kingpin):
                WheelAndStrut(pen).Dashed("M90 108V2").Tool("M90 104 124 4").Arc(90, 104, 88, -90, -71);
                return true;
            case nameof(Sketch.Caster):
                pen.Circle(70, 68, 38, "thick").Circle(70, 68, 22).Thin("M4 106H156").Dashed("M66 106V2").Tool("M62 104 100 4")
                .Arc(64, 100, 84, -90, -69);
                return true;
            case nameof(Sketch.TrailAtHub):
                pen.Circle(80, 68, 38, "thick").Thin("M4 106H156").Tool("M52 104 84 4").Dashed("M80 72V40").Dim(64, 68, 80, 68);
                return true;
            case nameof(Sketch.ForeAndAft):
                pen.Circle(92, 70, 34, "thick").Circle(76, 58, 34, "dashed").Thin("M4 104H156").Dashed("M92 66V12M76 54V12")
                .Dim(76, 16, 92, 16);
                return true;
            case nameof(Sketch.SwingArm):
                pen.Circle(112, 70, 34, "thick").Thin("M4 104H156M28 60 112 70").Circle(28, 60, 4, "solid").Dashed("M28 56V20M112 66V20")
                .Dim(28, 24, 112, 24);
                return true;
            case nameof(Sketch.BodyForward):
                pen.Circle(96, 70, 34, "thick").Thin("M4 104H156").Dashed("M96 104V20").Circle(44, 52, 4, "solid").Dashed("M44 48V24")
                .Dim(44, 28, 96, 28);
                return true;
            case nameof(Sketch.BodyLeft):
                pen.Solid("M10 50h18v54H10zM132 50h18v54H132z").Thin("M4 104H156").Dashed("M80 104V20").Circle(116, 60, 4, "solid")
                .Dashed("M116 56V32").Dim(80, 36, 116, 36);
                return true;
            case nameof(Sketch.BodyUp):
                pen.Solid("M10 50h18v54H10zM132 50h18v54H132z").Thin("M4 104H156").Circle(100, 44, 4, "solid").Dashed("M104 44h14")
                .Dim(112, 44, 112, 104);
                return true;
            case nameof(Sketch.PointInboard):
                FrontPoints(pen).Dashed("M58 60v44M118 80v24").Dim(58, 98, 118, 98);
                return true;
            case nameof(Sketch.PointAbove):
                FrontPoints(pen).Dashed("M58 56h86M118 80h26").Dim(138, 56, 138, 80);
                return true;
            default:
                return false;
        }
    }

    /// <summary>Coil-over on one axis: mount plane, upper seat, spring, perch, body, clamp bolt.</summary>
    private static Pen Station(Pen pen, double perch = Perch)
    {
        pen.Thick("M24 12h92").Solid("M56 12h28v8H56z").Solid("M46 24h48v3H46z").Coils(70, Seat + 1, perch - 1, 18, 5, "thin");
        Damper(pen, 70, Shoulder, BodyTop, Lower);
        return pen.Solid(FormattableString.Invariant($"M44 {perch}h52v4H44z"));
    }

    /// <summary>Rod, body and lower eye on one vertical axis.</summary>
    private static Pen Damper(Pen pen, double x, double shoulder, double top, double lower) => pen
        .Thin(FormattableString.Invariant($"M{x - 3} {shoulder}V{top}M{x + 3} {shoulder}V{top}"))
        .Thick(FormattableString.Invariant($"M{x - 8} {shoulder}h16"))
        .Solid(FormattableString.Invariant($"M{x - 9} {top}h18V{lower}h-18z"))
        .Circle(x, lower, 4, "thick");

    /// <summary>The measured distance at the right of the station, with its extension lines.</summary>
    private static void Across(Pen pen, double from, double to) =>
        pen.Dashed(FormattableString.Invariant($"M74 {from}h62M74 {to}h62")).Dim(128, from, 128, to);

    /// <summary>Seen from the front: tyre at the left, strut leaning beside it.</summary>
    private static Pen WheelAndStrut(Pen pen) => pen
        .Solid("M22 14c0-6 4-8 10-8h28c6 0 10 2 10 8v84c0 6-4 8-10 8H32c-6 0-10-2-10-8z")
        .Thin("M30 28h32M30 84h32").Thick("M62 56h14").Circle(62, 56, 2.5, "thick")
        .Solid("M106 30 114 31 106 92 96 90z").Thin("M111 30 115 2M108 30 112 2").Circle(102, 84, 4, "thick")
        .Thin("M76 50 98 74v14L76 66z");

    /// <summary>Seen from the front: hub face and arm with its inner pivot.</summary>
    private static Pen FrontPoints(Pen pen) => pen
        .Solid("M18 10c0-4 3-6 8-6h24c5 0 8 2 8 6v92c0 4-3 6-8 6H26c-5 0-8-2-8-6z")
        .Thick("M58 42v28").Circle(58, 56, 3, "thick").Thick("M66 84 118 80").Circle(66, 84, 4, "thick").Circle(118, 80, 4, "solid");
}
