using Cornerwright.Garage.Parts;
using Cornerwright.Mechanics.Bars;
using Cornerwright.Mechanics.Springs;
using Cornerwright.Workshop.Findings;
using AntiRollBar = Cornerwright.Garage.Parts.AntiRollBar;
using Kinds = Cornerwright.Workshop.Relations.RelationCatalogue;

namespace Cornerwright.Workshop.Relations;

/// <summary>Perches, dampers, bump stops and bars: the numbers of one part beside each other.</summary>
internal static class PartRelations
{
    public static void Look(RelationBook book, Perch perch)
    {
        string path = "parts/perches/" + perch.Id;
        var register = Num.Of(path + "/register", "register", perch.Register);
        var outer = Num.Of(path + "/outerDiameter", "outer diameter", perch.OuterDiameter);
        book.Add(Kinds.PerchShape, path, outer.Si / register.Si, new(1, 1.04, 1.65, 3),
            () => $"Perch \"{perch.Name}\" is {outer.Typed} wide, its register {register.Typed}.", outer, register);
    }

    public static void Look(RelationBook book, TopMount mount)
    {
        string path = "parts/topMounts/" + mount.Id;
        var (seat, rod) = (Num.Of(path + "/seatDrop", "seat drop", mount.SeatDrop), Num.Of(path + "/rodDrop", "rod drop", mount.RodDrop));
        book.Add(Kinds.MountShape, path, rod.Si - seat.Si, new(-0.09, 0.003, 0.028, 0.12),
            () => $"In top mount \"{mount.Name}\" the rod's shoulder lies {rod.Typed} down and the spring's seat {seat.Typed}.", seat, rod);
    }

    public static void Look(RelationBook book, Damper damper)
    {
        string path = "parts/dampers/" + damper.Id, name = $"Damper \"{damper.Name}\"";
        var (open, closed) = (Of("rodOpen", "rod showing, pulled out", damper.RodOpen), Of("rodClosed", "rod showing, pushed in",
            damper.RodClosed));
        var body = Of("bodyHeight", "body height", damper.BodyHeight);
        double stroke = open.Si - closed.Si;
        book.Add(Kinds.DamperStroke, path + "/stroke", stroke, new(0.015, 0.07, 0.28, 0.5),
            () => $"{name} has a stroke of {Say.Mm(stroke, 0)}; 70 to 280 mm are usual.", open, closed);
        book.Add(Kinds.DamperStroke, path + "/body", body.Si / stroke, new(0.6, 1.03, 3.4, 9),
            () => $"{name} has a body of {body.Typed} for a stroke of {Say.Mm(stroke, 0)}.", body, open, closed);
        var (low, high) = (Of("threadLow", "collar thread begins", damper.ThreadLow), Of("threadHigh", "collar thread ends",
            damper.ThreadHigh));
        book.Add(Kinds.DamperThread, path + "/length", high.Si - low.Si, new(0.01, 0.035, 0.21, 0.45),
            () => $"The collar's thread of {name} is {Say.Mm(high.Si - low.Si, 0)} long; 35 to 210 mm are usual.", low, high);
        book.Add(Kinds.DamperThread, path + "/body", body.Si - high.Si, new(-0.03, -0.005, 0.2, 0.4),
            () => $"The collar's thread of {name} ends at {high.Typed}, its body at {body.Typed}.", high, body);
        var (least, most) = (Of("windowLow", "rod at ride, at least", damper.WindowLow), Of("windowHigh", "rod at ride, at most",
            damper.WindowHigh));
        book.Add(Kinds.DamperWindow, path + "/low", least.Si - closed.Si, new(-0.002, 0.008, 0.2, 0.4),
            () => $"{name} wants at least {least.Typed} of rod at ride, and shows {closed.Typed} pushed in.", least, closed);
        book.Add(Kinds.DamperWindow, path + "/high", open.Si - most.Si, new(-0.002, 0.008, 0.2, 0.4),
            () => $"{name} wants at most {most.Typed} of rod at ride, and shows {open.Typed} pulled out.", most, open);
        book.Add(Kinds.DamperWindow, path + "/width", most.Si - least.Si, new(0.001, 0.01, 0.095, 0.25),
            () => $"The ride window of {name} is {Say.Mm(most.Si - least.Si, 0)} wide; 10 to 95 mm are usual.", least, most);
        Body(book, path, name, body, Of("bodyLow", "body height at least", damper.BodyLow), Of("bodyHigh", "body height at most",
            damper.BodyHigh));
        Curve(book, damper, path, name);

        Num Of(string field, string label, Garage.Readings.Reading? reading) => Num.Of($"{path}/{field}", label, reading);
    }

    private static void Body(RelationBook book, string path, string name, Num body, Num low, Num high)
    {
        book.Add(Kinds.DamperThread, path + "/clamp", high.Si - low.Si, new(0.002, 0.015, 0.11, 0.3),
            () => $"The body of {name} screws {Say.Mm(high.Si - low.Si, 0)} in its clamp; 15 to 110 mm are usual.", low, high);
        book.Add(Kinds.DamperThread, path + "/bodyLow", body.Si - low.Si, new(-0.05, -0.002, 0.11, 0.3),
            () => $"The body of {name} stands at {body.Typed} and may stand at {low.Typed} at least.", body, low);
        book.Add(Kinds.DamperThread, path + "/bodyHigh", high.Si - body.Si, new(-0.05, -0.002, 0.11, 0.3),
            () => $"The body of {name} stands at {body.Typed} and may stand at {high.Typed} at most.", body, high);
    }

    private static void Curve(RelationBook book, Damper damper, string path, string name)
    {
        for (int i = 0; i < damper.Curve.Count; i++)
        {
            var (speed, bump, rebound) = Row(i);
            book.Add(Kinds.DamperCurve, $"{path}/{i}/rebound", rebound.Si / bump.Si, new(0.1, 0.7, 5, 20),
                () => $"At {speed.Typed} {name} has {rebound.Typed} in rebound and {bump.Typed} in bump.", speed, bump, rebound);
            if (i == 0)
            {
                continue;
            }

            var (before, bumpBefore, reboundBefore) = Row(i - 1);
            Step(before, speed, bumpBefore, bump, $"{path}/{i}/bumpRise");
            Step(before, speed, reboundBefore, rebound, $"{path}/{i}/reboundRise");
        }

        // A force grows between not at all and with the square of speed.
        void Step(Num from, Num to, Num forceBefore, Num force, string place)
        {
            double power = Math.Log(force.Si / forceBefore.Si) / Math.Log(to.Si / from.Si);
            book.Add(Kinds.DamperCurve, place, power, Bands.Asked(0.02, 2.2),
                () => $"From {from.Typed} to {to.Typed} {name} goes from {forceBefore.Typed} to {force.Typed}.", from, to, forceBefore,
                    force);
        }

        (Num Speed, Num Bump, Num Rebound) Row(int i)
        {
            string at = FormattableString.Invariant($"{path}/curve/{i}");
            return (Num.Of(at + "/speed", "rod speed", damper.Curve[i].Speed), Num.Of(at + "/bump", "force in bump", damper.Curve[i].Bump),
                Num.Of(at + "/rebound", "force in rebound", damper.Curve[i].Rebound));
        }
    }

    public static void Look(RelationBook book, BumpStop stop)
    {
        string path = "parts/bumpStops/" + stop.Id, name = $"Bump stop \"{stop.Name}\"";
        var (length, spent) = (Num.Of(path + "/length", "length", stop.Length), Num.Of(path + "/spentLength", "length when spent",
            stop.SpentLength));
        book.Add(Kinds.StopShape, path, spent.Si / length.Si, new(0.08, 0.3, 0.75, 0.97),
            () => $"{name} is pressed from {length.Typed} to {spent.Typed}; 30 to 75 % of its length are usual.", length, spent);
        double x0 = 0, f0 = 0, before = double.NaN;
        for (int i = 0; i < stop.Curve.Count; i++)
        {
            string at = FormattableString.Invariant($"{path}/curve/{i}");
            var (x, f) = (Num.Of(at + "/deflection", "squeezed by", stop.Curve[i].Deflection), Num.Of(at + "/force", "force",
                stop.Curve[i].Force));
            double slope = (f.Si - f0) / (x.Si - x0), step = slope / before;
            if (i > 0)
            {
                book.Add(Kinds.StopCurve, at, step, new(0.05, 0.95, 6, 40),
                    () => FormattableString.Invariant($"{name} is {step:0.0} times as stiff at {x.Typed} as before it."), x, f);
            }
            else
            {
                book.Add(Kinds.StopCurve, at, slope, new(500, 8_000, 200_000, 2_000_000),
                    () => FormattableString.Invariant($"{name} begins with {slope / 1000:0.#} N/mm; 8 to 200 are usual."), x, f);
            }

            (x0, f0, before) = (x.Si, f.Si, slope);
            if (i == stop.Curve.Count - 1)
            {
                book.Add(Kinds.StopCurve, path + "/end", x.Si / (length.Si - spent.Si), new(0.2, 0.7, 1.12, 1.6),
                    () => $"The curve of {name} ends at {x.Typed}; it is spent after {Say.Mm(length.Si - spent.Si, 0)}.", x, length, spent);
                book.Add(Kinds.StopCurve, path + "/force", f.Si, new(200, 1_500, 20_000, 100_000),
                    () => $"Spent, {name} bears {f.Typed}; 1500 to 20 000 N are usual.", f);
            }
        }
    }

    public static void Look(RelationBook book, AntiRollBar bar)
    {
        string path = "parts/antiRollBars/" + bar.Id, name = $"Bar \"{bar.Name}\"";
        var diameter = Num.Of(path + "/diameter", "bar diameter", bar.Diameter);
        var bore = Num.Of(path + "/bore", "bore", bar.Bore);
        var straight = Num.Of(path + "/straightLength", "straight length", bar.StraightLength);
        var arm = Num.Of(path + "/arm", "lever arm", bar.Arm);
        book.Add(Kinds.BarShape, path + "/bore", bore.Si / diameter.Si, new(-0.01, 0, 0.86, 0.97),
            () => $"{name} has {diameter.Typed} of diameter and {bore.Typed} of bore.", diameter, bore);
        book.Add(Kinds.BarShape, path + "/arm", arm.Si / straight.Si, new(0.05, 0.15, 0.5, 1.2),
            () => $"{name} is {straight.Typed} long and its arm {arm.Typed}.", arm, straight);
        if (diameter.Si > 0 && straight.Si > 0 && arm.Si > 0 && !(bore.Given && !(bore.Si < diameter.Si)))
        {
            double second = Math.PI * (Math.Pow(diameter.Si, 4) - Math.Pow(bore.Given ? bore.Si : 0, 4)) / 32;
            double made = SpringSteel.ShearModulusHotRolled * second / (straight.Si * arm.Si * arm.Si);
            var rate = Num.Of(path + "/rate", "rate at one end", bar.Rate);
            book.Add(Kinds.BarShape, path + "/rate", rate.Si / made, new(0.15, 0.4, 2.2, 6),
                () => FormattableString.Invariant($"{name} has {rate.Typed} at its end; its size makes about {made / 1000:0} N/mm."),
                rate, diameter, straight, arm);
            book.Add(Kinds.BarShape, path + "/stiffness", made, new(500, 4_000, 150_000, 2_000_000),
                () => FormattableString.Invariant($"{name} makes about {made / 1000:0.#} N/mm at its end; 4 to 150 are usual."),
                diameter, straight, arm);
        }
    }
}
