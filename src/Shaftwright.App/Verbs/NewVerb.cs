using Shaftwright.Car;
using Shaftwright.Corner;
using Shaftwright.Cut;
using Shaftwright.Donors;
using Shaftwright.JobFile;
using Shaftwright.Joints;
using Shaftwright.Length;
using Shaftwright.Measures;

namespace Shaftwright.App.Verbs;

/// <summary><c>new</c>: a job with its parts laid out and nothing measured.</summary>
internal static class NewVerb
{
    private const int MostName = 120;

    public static int Run(string name, string? file, Streams streams)
    {
        if (name.Length > MostName)
            throw new BadInputException($"The name is too long; {MostName} letters at most.");
        var text = JobJson.Write(new JobDocument(Starter(name), new JobRecords()));
        if (JobJson.Read(text).Refusals is { Count: > 0 } refusals)
            throw new BadInputException(string.Join('\n', refusals.Select(r => r.ToString())));
        if (file is null)
        {
            streams.Out.Write(text);
            return Exit.Fine;
        }
        JobSource.Write(file, text, overwrite: false);
        streams.Out.Write(ToFillIn(file));
        return Exit.Fine;
    }

    /// <summary>Three heights and two joints and donors to fill in. What is not known stays out.</summary>
    private static Job Starter(string name) =>
        new()
        {
            Name = name,
            Car = new CarInput(),
            Corner = new CornerInput { Readings = [new(), new(), new()] },
            Joints = new JointsInput { Inner = new JointInput(), Outer = new JointInput() },
            Length = new LengthInput(),
            Donors = new DonorsInput { InnerEnd = new DonorShaft(), OuterEnd = new DonorShaft() },
            Cut = new CutInput(),
        };

    private static string ToFillIn(string file)
    {
        var text = new StringWriter { NewLine = "\n" };
        text.WriteLine($"{file} is written. Nothing is measured in it yet.");
        text.WriteLine(
            "Fill in what you know and leave out what you do not, as typed: \"431 ± 1 mm\"."
        );
        List<IReadOnlyList<string>> rows = [];
        void Row<T>(string path, Field<T> field)
            where T : IDimension<T> => rows.Add([path + field.Name, field.Words]);
        Row("corner.", CornerFields.TrialLength);
        Row("corner.readings[].", CornerFields.Travel);
        Row("corner.readings[].", CornerFields.In);
        Row("corner.readings[].", CornerFields.Out);
        Row("corner.readings[].", CornerFields.InnerAngle);
        Row("corner.readings[].", CornerFields.OuterAngle);
        Row("joints.inner.", JointFields.AngleLimit);
        Row("joints.inner.", JointFields.SeatToCentre);
        Row("joints.inner.", JointFields.SeatToEnd);
        Row("joints.outer.", JointFields.AngleLimit);
        Row("joints.outer.", JointFields.SeatToCentre);
        Row("joints.outer.", JointFields.SeatToEnd);
        Row("donors.innerEnd.zones[].", DonorFields.Until);
        Row("donors.innerEnd.zones[].", DonorFields.Diameter);
        Row("car.", CarFields.EngineTorque);
        PlainText.Table(text, rows);
        text.WriteLine();
        text.WriteLine("Every field and its range: shaftwright schema");
        return text.ToString();
    }
}
