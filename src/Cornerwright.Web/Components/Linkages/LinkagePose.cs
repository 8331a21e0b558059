using System.Runtime.InteropServices;
using Cornerwright.Garage.Chassis;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion.Hardpoints.Following;
using Cornerwright.Mechanics.Motion.Hardpoints.Poses;

namespace Cornerwright.Web.Components.Linkages;

/// <summary>A linkage at one travel, rack and plate, as it is drawn.</summary>
/// <param name="Place">Where it really is: the furthest place on the way where the one asked for cannot be reached.</param>
/// <param name="Joints">Body frame, m, in the linkage's order.</param>
/// <param name="HubFace">Centre of the hub's face.</param>
/// <param name="Wheel">Everything else that is read there.</param>
/// <param name="Stop">Why it is not where it was asked to be; null when it is.</param>
public sealed record LinkagePose(LinkagePlace Place, IReadOnlyList<Vec3> Joints, Vec3 HubFace, WheelGeometry Wheel, CannotReach? Stop)
{
    /// <summary>All that the browser needs to draw it, little-endian 32-bit floats in the order of linkage3d.js.</summary>
    public byte[] Bytes()
    {
        var f = new List<float>(3 * (Joints.Count + 1) + 22);
        void Add(in Vec3 v) => f.AddRange([(float)v.X, (float)v.Y, (float)v.Z]);
        foreach (var joint in Joints)
        {
            Add(joint);
        }

        Add(HubFace);
        Add(Wheel.Spindle);
        Add(Wheel.Contact);
        f.Add(Wheel.Steering.Exists ? 1 : 0);
        Add(Wheel.Steering.Point);
        Add(Wheel.Steering.Direction);
        f.Add(Wheel.Screw.Exists ? 1 : 0);
        Add(Wheel.Screw.Point);
        Add(Wheel.Screw.Direction);
        f.AddRange([double.IsFinite(Wheel.RollCentreZ) ? 1 : 0, double.IsFinite(Wheel.RollCentreZ) ? (float)Wheel.RollCentreZ : 0]);
        return MemoryMarshal.AsBytes<float>(CollectionsMarshal.AsSpan(f)).ToArray();
    }

    /// <summary>Every point by its property in the table, with the hub's face.</summary>
    public IReadOnlyDictionary<string, Vec3> ByProperty(LinkageSetting setting)
    {
        ArgumentNullException.ThrowIfNull(setting);
        var points = new Dictionary<string, Vec3>(StringComparer.Ordinal) { [nameof(HardpointTable.HubFace)] = HubFace };
        for (int i = 0; i < Joints.Count; i++)
        {
            points[setting.Points.Joints[i].Field.PropertyName] = Joints[i];
        }

        return points;
    }
}
