namespace Cornerwright.Web.Components.Measures;

/// <summary>Sketches of parts on the bench.</summary>
internal static class PartSketches
{
    public static void Draw(Pen pen, Sketch sketch)
    {
        switch (sketch.Name)
        {
            case nameof(Sketch.FreeLength):
                pen.Thin("M30 104h100").Coils(74, 12, 104, 24, 6).Dashed("M74 12h60").Dim(124, 12, 124, 104);
                break;
            case nameof(Sketch.SolidHeight):
                pen.Thin("M30 104h100").Coils(74, 48, 104, 26, 9).Solid("M44 40h60v7H44z").Dim(124, 48, 124, 104);
                break;
            case nameof(Sketch.Deflection):
                pen.Thin("M20 104h120").Coils(52, 14, 104, 18, 6, "thin").Coils(112, 50, 104, 18, 6).Dashed("M52 14h40M112 50H76")
                .Dim(84, 14, 84, 50);
                break;
            case nameof(Sketch.InnerDiameter):
                Ring(pen, 44, 34).Dim(46, 56, 114, 56).Tool("M46 44v24M114 44v24");
                break;
            case nameof(Sketch.OuterDiameter):
                Ring(pen, 44, 34).Dim(36, 56, 124, 56).Tool("M34 40v32M126 40v32");
                break;
            case nameof(Sketch.WireDiameter):
                pen.Thick("M16 30C60 18 100 18 144 30M16 62C60 50 100 50 144 62").Thin("M16 90C60 78 100 78 144 90").Dim(80, 21, 80, 53)
                .Tool("M66 20h28M66 54h28");
                break;
            case nameof(Sketch.ActiveCoils):
                pen.Thick("M40 10h70M40 104h70").Coils(75, 12, 102, 30, 6).Dashed("M100 24h36M100 90h36").Dim(130, 24, 130, 90);
                break;
            case nameof(Sketch.WireStrength):
                pen.Solid("M20 46h38l10 6h24l10-6h38v20h-38l-10-6H68l-10 6H20z").Dim(62, 90, 8, 90).Dim(98, 90, 152, 90);
                break;
            case nameof(Sketch.SpringRate):
            case nameof(Sketch.Force):
                pen.Thin("M30 106h100").Coils(80, 38, 106, 26, 5).Solid("M46 28h68v9H46z").Dim(80, 4, 80, 27);
                if (sketch == Sketch.SpringRate)
                {
                    pen.Dashed("M114 38h24M106 56h32").Dim(132, 38, 132, 56);
                }

                break;
            case nameof(Sketch.SheetThickness):
                pen.Solid("M18 48h124v16H18z").Dashed("M110 48h46M110 64h46").Dim(150, 48, 150, 64);
                break;
            case nameof(Sketch.RegisterBelow):
                Collared(pen).Dim(50, 88, 110, 88).Dashed("M50 74v20M110 74v20");
                break;
            case nameof(Sketch.RegisterAbove):
                Collared(pen).Dim(50, 20, 110, 20).Dashed("M50 34v-20M110 34v-20");
                break;
            case nameof(Sketch.CollarHeight):
                Collared(pen).Dashed("M110 34h40M142 48h10").Dim(146, 34, 146, 48);
                break;
            default:
                Seats(pen, sketch);
                break;
        }
    }

    /// <summary>What a spring stands on and hangs from.</summary>
    private static void Seats(Pen pen, Sketch sketch)
    {
        switch (sketch.Name)
        {
            case nameof(Sketch.PerchRegister):
                PerchPart(pen).Dim(48, 14, 112, 14).Dashed("M48 30V8M112 30V8");
                break;
            case nameof(Sketch.PerchOuter):
                PerchPart(pen).Dim(26, 94, 134, 94).Dashed("M26 60v40M134 60v40");
                break;
            case nameof(Sketch.PerchDepth):
                PerchPart(pen).Dashed("M128 44h26M112 76h42").Dim(148, 44, 148, 76);
                break;
            case nameof(Sketch.CollarPitch):
                pen.Solid("M62 4h36v104H62z").Thin("M62 14l36 6M62 26l36 6M62 38l36 6M62 50l36 6M62 62l36 6M62 74l36 6M62 86l36 6")
                .Dashed("M98 44h36M98 56h36").Dim(126, 44, 126, 56);
                break;
            case nameof(Sketch.MountRegister):
                pen.Thick("M16 14h128").Solid("M48 14h64v18H48z").Solid("M26 32h108v6H26z").Solid("M54 38h52v12H54z")
                .Coils(80, 52, 108, 38, 3, "thin").Dashed("M54 50v26M106 50v26").Dim(54, 70, 106, 70);
                break;
            default:
                Wheels(pen, sketch);
                break;
        }
    }

    private static void Wheels(Pen pen, Sketch sketch)
    {
        switch (sketch.Name)
        {
            case nameof(Sketch.SectionWidth):
                TyreSection(pen).Dim(40, 52, 120, 52).Dashed("M40 52v44M120 52v44");
                break;
            case nameof(Sketch.TreadWidth):
                TyreSection(pen).Dashed("M56 22V6M104 22V6").Dim(56, 9, 104, 9);
                break;
            case nameof(Sketch.ShoulderDrop):
                TyreSection(pen).Tool("M40 20h110").Dashed("M112 31h36").Dim(140, 20, 140, 31);
                break;
            case nameof(Sketch.RimWidth):
                TyreSection(pen).Dashed("M54 88v20M106 88v20").Dim(54, 104, 106, 104);
                break;
            case nameof(Sketch.TyreDiameter):
                pen.Circle(72, 56, 46, "thick").Circle(72, 56, 28).Circle(72, 56, 6).Dashed("M72 10h64M72 102h64").Dim(130, 10, 130, 102);
                break;
            case nameof(Sketch.CentreBore):
                WheelFace(pen).Dim(68, 56, 92, 56);
                break;
            case nameof(Sketch.LoadRating):
                WheelFace(pen).Dim(80, 2, 80, 24);
                break;
            case nameof(Sketch.PartMass):
                pen.Circle(80, 44, 34, "thick").Circle(80, 44, 20).Solid("M44 84h72v16H44z").Dim(80, 44, 80, 82);
                break;
            case nameof(Sketch.SeatThickness):
                RimSection(pen).Dashed("M92 62v44M104 62v44").Dim(92, 96, 104, 96);
                break;
            case nameof(Sketch.Pockets):
                pen.Solid("M62 12h40v88H62V76h22V60H62V52h22V36H62z").Thin("M8 20h54M8 92h54")
                .Dashed("M62 36v-24M84 36V4").Dim(62, 8, 84, 8);
                break;
            case nameof(Sketch.FlangeThickness):
                RimSection(pen).Dashed("M22 20V6M32 20V6").Dim(22, 10, 32, 10);
                break;
            case nameof(Sketch.BarrelRadius):
                RimSection(pen).Dashed("M20 96h130").Dim(52, 96, 52, 41);
                break;
            case nameof(Sketch.SpokeRoom):
                RimSection(pen).Dashed("M92 50v50M112 50v14").Tool("M92 30v74").Dim(92, 54, 112, 54);
                break;
            default:
                StopsAndBars(pen, sketch);
                break;
        }
    }

    private static void StopsAndBars(Pen pen, Sketch sketch)
    {
        switch (sketch.Name)
        {
            case nameof(Sketch.StopLength):
                Stop(pen, 26, 88).Dashed("M98 26h38M98 88h38").Dim(128, 26, 128, 88);
                break;
            case nameof(Sketch.StopSpent):
                Stop(pen, 52, 88).Solid("M50 44h60v7H50z").Dashed("M98 52h38M98 88h38").Dim(128, 52, 128, 88);
                break;
            case nameof(Sketch.StopSqueeze):
                Stop(pen, 52, 88).Dashed("M60 26h40v26M60 26v26M100 26h36M100 52h36").Dim(128, 26, 128, 52);
                break;
            case nameof(Sketch.BarRate):
                Bar(pen).Dim(126, 84, 126, 56).Dim(34, 56, 34, 84);
                break;
            case nameof(Sketch.BarDiameter):
                pen.Circle(80, 56, 36, "thick").Dim(44, 56, 116, 56).Tool("M42 40v32M118 40v32");
                break;
            case nameof(Sketch.BarBore):
                Ring(pen, 40, 26).Dim(54, 56, 106, 56);
                break;
            case nameof(Sketch.BarLength):
                Bar(pen).Dashed("M40 30V6M120 30V6").Dim(40, 12, 120, 12);
                break;
            case nameof(Sketch.BarArm):
                Bar(pen).Dashed("M120 30h32M110 92h42").Dim(146, 30, 146, 92);
                break;
            default:
                pen.Circle(72, 56, 44, "thick").Circle(72, 56, 26).Solid("M70 26h4v-10h-4z").Circle(124, 24, 17, "solid")
                .Thin("M110 34 74 20").Dim(124, 24, 134, 14);
                break;
        }
    }

    private static Pen Ring(Pen pen, double outer, double inner) => pen.Circle(80, 56, outer, "thick").Circle(80, 56, inner, "thick");

    private static Pen Collared(Pen pen) => pen.Solid("M18 48h32V34h60v14h32v16h-32v14H50V64H18z");

    private static Pen PerchPart(Pen pen) => pen.Solid("M26 44h22V30h64v14h22v12h-22v20H48V56H26z").Dashed("M80 20v70");

    private static Pen TyreSection(Pen pen) => pen
        .Solid("M54 88c-2-8-14-20-14-36 0-14 6-26 16-32h48c10 6 16 18 16 32 0 16-12 28-14 36h-8c2-12 10-22 10-34 0-10-4-18-10-22H62c-6 "
            + "4-10 12-10 22 0 12 8 22 10 34z")
        .Thick("M50 80v10h10l6 6h28l6-6h10V80");

    private static Pen WheelFace(Pen pen) => pen.Circle(80, 56, 48, "thick").Circle(80, 56, 42).Circle(80, 56, 12, "thick")
        .Thin("M80 44V14M91 52 120 42M87 66 105 90M73 66 55 90M69 52 40 42");

    /// <summary>Upper half of a wheel in section: barrel above, street side at the right.</summary>
    private static Pen RimSection(Pen pen) => pen
        .Thick("M22 20v14h10l8 6h72l8-6h18V20").Solid("M120 34h12c-2 14-12 22-18 30l-2 12H92V64h16c2-10 8-22 12-30z").Dashed("M8 96h144");

    private static Pen Stop(Pen pen, double top, double bottom)
    {
        var (shoulder, waist, foot) = (0.3 * (bottom - top), 0.2 * (bottom - top), 0.5 * (bottom - top));
        return pen.Thin("M77 4v104M83 4v104").Thick("M48 89h64").Solid(FormattableString.Invariant(
            $"M62 {top}h36l-5 {shoulder:0.#} 5 {waist:0.#}-4 {foot:0.#}H66l-4-{foot:0.#} 5-{waist:0.#}z"));
    }

    private static Pen Bar(Pen pen) =>
        pen.Thick("M40 30h80M40 30 30 92M120 30l10 62").Thin("M40 25h80M40 35h80").Circle(30, 94, 4, "solid").Circle(130, 94, 4, "solid");
}
