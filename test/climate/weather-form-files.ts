/**
 * Weather files of all forms. Headers are those of the services' own files; values are invented, the
 * same in each, so that all forms tell the same weather.
 */
export const plainWeather = `date,tmin,tmax,rain
2027-05-01,6.5,17.2,0.4
2027-05-02,-0.3,18,0
2027-05-03,5.9,15.5,12.2
2027-05-04,7.0,16.0,
`;

export const weatherForms: Readonly<Record<string, string>> = {
  "the plain form": plainWeather,
  "the plain form with units in its names": `date,tmin_c,tmax_c,rain_mm
2027-05-01,6.5,17.2,0.4
2027-05-02,-0.3,18,0
2027-05-03,5.9,15.5,12.2
2027-05-04,7.0,16.0,
`,
  "the plain form in Fahrenheit and inches": `date,tmin_f,tmax_f,rain_in
2027-05-01,43.7,62.96,0.016
2027-05-02,31.46,64.4,0
2027-05-03,42.62,59.9,.48
2027-05-04,44.6,60.8,
`,
  "the plain form, its columns mixed, with others between": `Rain_mm,note,TMAX_F,date,tmin_C
0.4,a,62.96,2027-05-01,6.5
0,,64.4,2027-05-02,-0.3
12.2,"b, c",59.9,2027-05-03,5.9
,,60.8,2027-05-04,7
`,
  "the plain form of a spreadsheet with decimal commas": `\ufeffdate;tmin;tmax;rain\r
2027-05-01;6,5;17,2;0,4\r
2027-05-02;-0,3;18;0\r
2027-05-03;5,9;15,5;12,2\r
2027-05-04;7,0;16,0;\r
`,
  "NOAA's daily access file": `"STATION","DATE","LATITUDE","LONGITUDE","ELEVATION","NAME","PRCP","PRCP_ATTRIBUTES","SNOW","SNOW_ATTRIBUTES","TMAX","TMAX_ATTRIBUTES","TMIN","TMIN_ATTRIBUTES"
"XX000000001","2027-05-01","53.1","-6.2","30.0","INVENTED, XX","4",",,S","0",",,S","172",",,S","65",",,S"
"XX000000001","2027-05-02","53.1","-6.2","30.0","INVENTED, XX","0","T,,S",,,"180",",,S","-3",",,S"
"XX000000001","2027-05-03","53.1","-6.2","30.0","INVENTED, XX","122",",,S",,,"155",",,S","59",",,S"
"XX000000001","2027-05-04","53.1","-6.2","30.0","INVENTED, XX",,,,,"160",",,S","70",",,S"
`,
  "DWD's daily file": `STATIONS_ID;MESS_DATUM;QN_3;  FX;  FM;QN_4; RSK;RSKF; SDK;SHK_TAG;  NM; VPM;  PM; TMK; UPM; TXK; TNK; TGK;eor
          9;20270501;   10;  12.1;   4.5;    3;   0.4;   6;   7.1;   0;   4.1;   9.0;  990.1;   11.9;   71.00;   17.2;    6.5;    3.0;eor
          9;20270502;   10;-999;   4.5;    3;   0.0;   6;   7.1;   0;   4.1;   9.0;  990.1;   11.9;   71.00;   18.0;   -0.3;    3.0;eor
          9;20270503;   10;  12.1;   4.5;    3;  12.2;   6;   7.1;   0;   4.1;   9.0;  990.1;   11.9;   71.00;   15.5;    5.9;-999;eor
          9;20270504;   10;  12.1;   4.5;    3;-999;   6;   7.1;   0;   4.1;   9.0;  990.1;   11.9;   71.00;   16.0;    7.0;    3.0;eor
`,
  "Meteo-France's daily file": `NUM_POSTE;NOM_USUEL;LAT;LON;ALTI;AAAAMMJJ;RR;QRR;TN;QTN;HTN;QHTN;TX;QTX;HTX;QHTX
01000001;INVENTE;46.1;5.3;330;20270501;0.4;1;6.5;1;430;9;17.2;1;1420;9
01000001;INVENTE;46.1;5.3;330;20270502;0.0;1;-0.3;1;430;9;18.0;1;1420;9
01000001;INVENTE;46.1;5.3;330;20270503;12.2;1;5.9;1;430;9;15.5;1;1420;9
01000001;INVENTE;46.1;5.3;330;20270504;;;7.0;1;430;9;16.0;1;1420;9
`,
  "Environment Canada's daily file": `"Longitude (x)","Latitude (y)","Station Name","Climate ID","Date/Time","Year","Month","Day","Data Quality","Max Temp (°C)","Max Temp Flag","Min Temp (°C)","Min Temp Flag","Total Precip (mm)","Total Precip Flag"
"-75.1","45.1","INVENTED","6000001","2027-05-01","2027","05","01","","17.2","","6.5","","0.4",""
"-75.1","45.1","INVENTED","6000001","2027-05-02","2027","05","02","","18.0","","-0.3","","0.0","T"
"-75.1","45.1","INVENTED","6000001","2027-05-03","2027","05","03","","15.5","","5.9","","12.2",""
"-75.1","45.1","INVENTED","6000001","2027-05-04","2027","05","04","","16.0","","7.0","","","M"
"-75.1","45.1","INVENTED","6000001","2027-05-05","2027","05","05","","","","","","",""
`,
  "an older one, with lines before its header": `"Station Name","INVENTED"
"Province","ONTARIO"
"Latitude","45.10"

"Legend"
"M","Missing"
"Date/Time","Year","Month","Day","Data Quality","Max Temp (°C)","Max Temp Flag","Min Temp (°C)","Min Temp Flag","Total Precip (mm)","Total Precip Flag"
"2027-05-01","2027","05","01","","17.2","","6.5","","0.4",""
"2027-05-02","2027","05","02","","18.0","","-0.3","","0.0","T"
"2027-05-03","2027","05","03","","15.5","","5.9","","12.2",""
"2027-05-04","2027","05","04","","16.0","","7.0","","","M"
`,
  "KNMI's daily file": `# This file of invented values is "as it comes, with comments
# STN      LON(east)   LAT(north)  ALT(m)  NAME
# 999:     5.100       52.100      2.00    INVENTED
#
STN,YYYYMMDD,DDVEC,FHVEC,   TN,  TNH,   TX,  TXH,   RH,  RHX

  999,20270501,  200,   31,   65,    5,  172,   14,    4,    2
  999,20270502,  200,   31,   -3,    5,  180,   14,   -1,   -1
  999,20270503,  200,   31,   59,    5,  155,   14,  122,   20
  999,20270504,  200,   31,   70,    5,  160,   14,     ,     
`,
  "one whose header is a comment": `# YYYYMMDD = date
# STN,YYYYMMDD,   TN,   TX,   RH
  999,20270501,   65,  172,    4
  999,20270502,   -3,  180,   -1
  999,20270503,   59,  155,  122
  999,20270504,   70,  160,     
`,
  "the Bureau of Meteorology's files, joined": `Product code,Bureau of Meteorology station number,Year,Month,Day,Maximum temperature (Degree C),Minimum temperature (Degree C),Rainfall amount (millimetres),Quality
XXXX0001,099999,2027,05,01,17.2,6.5,0.4,Y
XXXX0001,099999,2027,05,02,18.0,-0.3,0,Y
XXXX0001,099999,2027,05,03,15.5,5.9,12.2,N
XXXX0001,099999,2027,5,4,16.0,7.0,,
`,
  "a forecast file": `latitude,longitude,elevation,utc_offset_seconds,timezone,timezone_abbreviation
52.52,13.42,38.0,3600,Europe/Berlin,CET

time,temperature_2m_max (°C),temperature_2m_min (°C),precipitation_sum (mm)
2027-05-01,17.2,6.5,0.40
2027-05-02,18.0,-0.3,0.00
2027-05-03,15.5,5.9,12.20
2027-05-04,16.0,7.0,
`,
  "a forecast file in Fahrenheit and inches": `time,temperature_2m_max (°F),temperature_2m_min (°F),precipitation_sum (inch)
2027-05-01,62.96,43.7,0.016
2027-05-02,64.4,31.46,0
2027-05-03,59.9,42.62,0.48
2027-05-04,60.8,44.6,
`,
};
